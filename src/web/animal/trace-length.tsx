// Length from a photograph: two touches on a ruler, then along the middle of the body; the answer with its error as one goes.
import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import condition from '../../../data/condition.json';
import { type Spot, tracedLength } from '../../animal/traced-length.ts';
import { QuantityField } from '../controls/quantity-field.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { keepPhoto, writeEntry } from './animal-api.ts';
import { type Picture, pictureFrom } from './picture.ts';

const errors = { clickMm: condition.clickErrorMm.value, shareFrac: condition.tracedLengthErrorPct.value / 100 };

interface TraceLengthProps {
  readonly animalId: string;
  readonly onWritten: () => void;
}

export function TraceLength({ animalId, onWritten }: TraceLengthProps) {
  const { t } = useSheet();
  const [picture, setPicture] = useState<Picture | null>(null);
  const file = useRef<HTMLInputElement>(null);
  return (
    <section className="sheet-part no-paper">
      <h2>{t('trace.title')}</h2>
      <p className="question-why">{t('trace.lead')}</p>
      <input
        ref={file}
        type="file"
        accept="image/*"
        capture="environment"
        className="visually-hidden"
        aria-label={t('trace.choose')}
        onChange={(event) => {
          const chosen = event.target.files?.[0];
          if (chosen) void pictureFrom(chosen).then(setPicture);
        }}
      />
      <Button className="button button-quiet" onPress={() => file.current?.click()}>
        {t('trace.choose')}
      </Button>
      {picture && <Tracing key={picture.url} picture={picture} animalId={animalId} onWritten={onWritten} />}
    </section>
  );
}

interface TracingProps extends TraceLengthProps {
  readonly picture: Picture;
}

function Tracing({ picture, animalId, onWritten }: TracingProps) {
  const { t, measure } = useSheet();
  const [spots, setSpots] = useState<readonly Spot[]>([]);
  const [rulerMm, setRulerMm] = useState(100);
  const [a, b] = spots;
  const line = spots.slice(2);
  const found = a && b ? tracedLength([a, b], rulerMm, line, errors) : null;
  const touch = (event: React.MouseEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const xPx = ((event.clientX - box.left) * picture.width) / box.width;
    const yPx = ((event.clientY - box.top) * picture.height) / box.height;
    setSpots((now) => [...now, { xPx, yPx }]);
  };
  const save = async () => {
    if (!found?.ok) return;
    const { lengthMm, errorMm } = found.value;
    const body = {
      totalLengthCm: Number((lengthMm / 10).toFixed(1)),
      snoutVentMm: null,
      errorMm: Math.round(errorMm),
      how: 'trace',
    };
    await keepPhoto(animalId, picture.base64, 'length');
    if ((await writeEntry(animalId, { kind: 'length', body, clientKey: crypto.randomUUID() })).ok) onWritten();
  };
  const path = (points: readonly Spot[]): string =>
    points.length > 1 ? `M${points.map((p) => `${p.xPx} ${p.yPx}`).join('L')}` : '';
  const unit = picture.width / 320;
  return (
    <div className="tracing">
      <p aria-live="polite">{t(spots.length < 2 ? 'trace.ruler' : 'trace.line')}</p>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: a length can also be typed in under "Write down" */}
      <svg
        viewBox={`0 0 ${picture.width} ${picture.height}`}
        className="trace-picture"
        role="img"
        aria-label={t('trace.photo', { n: spots.length })}
        onClick={touch}
      >
        <image href={picture.url} width={picture.width} height={picture.height} />
        {a && b && <path d={path([a, b])} className="trace-ruler" strokeWidth={2.5 * unit} />}
        <path d={path(line)} className="trace-line" strokeWidth={2.5 * unit} />
        {spots.map((spot, i) => (
          <circle
            key={`${String(i)}-${spot.xPx}`}
            cx={spot.xPx}
            cy={spot.yPx}
            r={4 * unit}
            className={i < 2 ? 'trace-mark' : 'trace-spot'}
            strokeWidth={1.5 * unit}
          />
        ))}
      </svg>
      <QuantityField
        label={t('trace.rulerApart')}
        kind="length"
        value={rulerMm / 1000}
        min={0.05}
        max={2}
        compact
        onChange={(apartM) => apartM !== null && setRulerMm(1000 * apartM)}
      />
      <Button
        className="quiet-button"
        isDisabled={spots.length === 0}
        onPress={() => setSpots((now) => now.slice(0, -1))}
      >
        {t('trace.undo')}
      </Button>
      {found?.ok && (
        <>
          <p className="trace-answer">
            {t('trace.answer', {
              cm: measure.text('length', found.value.lengthMm / 1000, 1),
              err: measure.text('length', found.value.errorMm / 1000, 1),
            })}
          </p>
          <p className="field-hint">{t('trace.error')}</p>
          <Button className="button" onPress={() => void save()}>
            {t('trace.save')}
          </Button>
        </>
      )}
    </div>
  );
}
