// Hatching, dots and arrow heads shared by every drawing on the sheet; drawn once, used by name.

export function DrawingPatterns() {
  return (
    <svg className="pattern-store" width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        <pattern id="hatch-cold" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="6" className="hatch-line" />
        </pattern>
        <pattern id="dots-warm" width="6" height="6" patternUnits="userSpaceOnUse">
          <circle cx="1.5" cy="1.5" r="1.05" className="dot" />
          <circle cx="4.5" cy="4.5" r="1.05" className="dot" />
        </pattern>
        {(['warm', 'cool', 'ink'] as const).map((name) => (
          <marker
            key={name}
            id={`arrow-${name}`}
            viewBox="0 0 8 8"
            refX="6"
            refY="4"
            markerWidth="6"
            markerHeight="6"
            orient="auto-start-reverse"
          >
            <path d="M1 1L7 4L1 7" className={`arrow-${name}`} />
          </marker>
        ))}
      </defs>
    </svg>
  );
}
