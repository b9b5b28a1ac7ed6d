// The front view of the enclosure to scale: what stands where, how big, and how warm each place is now.
// Leaves out judgement: the title states the finding, the verdicts are beside it.
import { type ReactNode, useMemo } from 'react';
import type { Enclosure } from '../../physics/enclosure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { Dimension } from './dimension.tsx';
import { HangingTags } from './hanging-tags.tsx';
import { HeaterShape } from './heater-shape.tsx';
import type { Readings } from './readings.ts';
import { SectionAirNumbers } from './section-air-numbers.tsx';
import { SectionField } from './section-field.tsx';
import { Base, Fittings, Panels } from './section-fittings.tsx';
import { sectionFrame } from './section-frame.ts';
import { HeaterHandles, ProbeHandles, type SectionMoves } from './section-handles.tsx';
import { Vents } from './section-vents.tsx';
import type { WantedClimate } from './wanted.ts';

interface SectionDrawingProps {
  readonly enclosure: Enclosure;
  readonly readings: Readings | null;
  readonly climate: WantedClimate | null;
  readonly width: number;
  readonly mostInsideHeight: number;
  readonly describedBy: string;
  readonly moves: SectionMoves | null;
}

export function SectionDrawing(props: SectionDrawingProps): ReactNode {
  const { enclosure, readings, climate, width, mostInsideHeight, moves } = props;
  const { t, measure } = useSheet();
  const frame = useMemo(() => sectionFrame(enclosure, width, mostInsideHeight), [enclosure, width, mostInsideHeight]);
  const { box } = enclosure;
  const floorM = enclosure.substrate?.depthM ?? 0;
  const outerLeft = frame.left - frame.wall.left;
  const ventsLeft = box.vents.some((vent) => vent.panel === 'left');
  const dimensionX = outerLeft - (frame.narrow ? (ventsLeft ? 28 : 18) : 40);
  const height = readings ? frame.height : frame.tagsTop + 4;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing that holds movable points; a fieldset cannot hold it
    <svg
      className="drawing section"
      viewBox={`0 0 ${width} ${height}`}
      width="100%"
      role="group"
      aria-label={t('section.label')}
      aria-describedby={props.describedBy}
    >
      <Panels enclosure={enclosure} frame={frame} />
      {readings && climate && (
        <SectionField enclosure={enclosure} frame={frame} readings={readings} climate={climate} />
      )}
      {!(readings && climate) && floorM > 0 && (
        <rect
          className="substrate"
          x={frame.left}
          y={frame.z(floorM)}
          width={frame.right - frame.left}
          height={floorM * frame.scale}
        />
      )}
      <Fittings enclosure={enclosure} frame={frame} />
      <Vents enclosure={enclosure} frame={frame} />
      <Base enclosure={enclosure} frame={frame} />
      {enclosure.heaters.map((heater) => (
        <HeaterShape
          key={heater.id}
          heater={heater}
          frame={frame}
          floorM={floorM}
          heightM={box.heightM}
          on={readings ? readings.heaterW > 0.5 && (heater.period === 'all' || readings.isDay) : true}
        />
      ))}
      <Dimension
        x1={frame.left - frame.wall.left}
        x2={frame.right + frame.wall.right}
        y1={18}
        y2={18}
        text={measure.text('length', box.lengthM)}
      />
      <Dimension
        x1={dimensionX}
        x2={dimensionX}
        y1={frame.top}
        y2={frame.floor}
        text={measure.text('length', box.heightM)}
      />
      {floorM > 0 && !frame.narrow && (
        <Dimension
          x1={frame.right + frame.wall.right + 10}
          x2={frame.right + frame.wall.right + 10}
          y1={frame.z(floorM)}
          y2={frame.floor}
          text={measure.text('length', floorM, measure.settings.length === 'in' ? 1 : 0)}
          beside="right"
        />
      )}
      {readings && <HangingTags enclosure={enclosure} frame={frame} readings={readings} climate={climate} />}
      {readings && <SectionAirNumbers enclosure={enclosure} frame={frame} readings={readings} climate={climate} />}
      <ProbeHandles enclosure={enclosure} frame={frame} readings={readings} moves={moves} />
      <HeaterHandles enclosure={enclosure} frame={frame} moves={moves} />
    </svg>
  );
}
