// A ready enclosure as a small front view; all of them to the same scale, so that sizes compare.
import type { Enclosure } from '../../physics/enclosure.ts';

/** Units per metre, the same for every one. */
const scale = 63;
const width = 1.9 * scale;
const height = 1.25 * scale;

export function ExampleThumbnail({ enclosure }: { readonly enclosure: Enclosure }) {
  const { box, heaters, hides, substrate } = enclosure;
  const left = 3;
  const floor = height - 4;
  const floorM = substrate?.depthM ?? 0;
  return (
    <svg className="thumbnail" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <rect
        className="thumbnail-box"
        x={left}
        y={floor - box.heightM * scale}
        width={box.lengthM * scale}
        height={box.heightM * scale}
      />
      <rect
        className="thumbnail-floor"
        x={left}
        y={floor - Math.max(1, floorM * scale)}
        width={box.lengthM * scale}
        height={Math.max(1, floorM * scale)}
      />
      {hides.map((hide) => (
        <path
          key={hide.xM}
          className="thumbnail-hide"
          d={`M${left + (hide.xM - hide.lengthM / 2) * scale} ${floor - floorM * scale}v${-hide.heightM * scale}h${hide.lengthM * scale}v${hide.heightM * scale}z`}
        />
      ))}
      {heaters.map((heater) => {
        const half = ((heater.lengthM ?? 0.07) * scale) / 2;
        const flat = heater.kind === 'heat-mat';
        const y = flat ? floor - 1 : floor - Math.min(heater.zM, box.heightM - 0.03) * scale;
        return (
          <rect
            key={heater.id}
            className="thumbnail-heater"
            x={left + heater.xM * scale - half}
            y={y}
            width={half * 2}
            height={flat ? 2.5 : 3.5}
          />
        );
      })}
      <line className="thumbnail-ground" x1={0} x2={width} y1={floor + 1} y2={floor + 1} />
    </svg>
  );
}
