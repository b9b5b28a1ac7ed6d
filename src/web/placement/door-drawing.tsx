// The door that is held shut: one bar for each requirement that does not stand, none left when it may open.

const heightOf = 96;

export function DoorDrawing({ bars, open }: { readonly bars: number; readonly open: boolean }) {
  const step = (heightOf - 16) / Math.max(bars, 1);
  return (
    <svg viewBox="0 0 72 108" aria-hidden="true" className="door-drawing">
      <path d="M6 104V4h60v100" className="door-frame" />
      <path d="M0 104h72" className="door-frame" />
      {open ? (
        <path d="M8 6l34 10v92L8 104z" className="door-leaf" />
      ) : (
        <>
          <path d="M8 6h56v98H8z" className="door-leaf" />
          {Array.from({ length: bars }, (_, i) => 14 + i * step).map((yAt) => (
            <path key={yAt} d={`M2 ${yAt.toFixed(1)}h68`} className="door-bar" />
          ))}
        </>
      )}
      <circle cx={open ? 37 : 57} cy="58" r="2.4" className="door-knob" />
    </svg>
  );
}
