// The animal as a line of its true length on the floor of its box, to scale, and the lengths it may have in a year.
import { useEffect, useState } from 'react';
import { lengthAfterCm, type MoveUp } from '../../animal/growth.ts';
import { QuantityField } from '../controls/quantity-field.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { type AnimalSheet, readMoveUp } from './animal-api.ts';
import { useSaying } from './say.ts';

interface GrowthDrawingProps {
  readonly sheet: AnimalSheet;
  readonly boxCm: number;
  readonly onBox: (cm: number) => void;
}

/** A body of this length as a gentle wave; the length along the line is true to scale. */
export function bodyPath(lengthCm: number, boxCm: number, yCm: number): string {
  const span = Math.min(lengthCm * 0.82, boxCm * 0.94);
  // A sine of n waves is longer than its span; the height that makes up the difference is found by halving.
  const waves = 3;
  const along = (height: number): number => {
    let sum = 0;
    for (let i = 0; i < 60; i++) {
      const [a, b] = [i / 60, (i + 1) / 60];
      const y = (s: number): number => height * Math.sin(2 * Math.PI * waves * s);
      sum += Math.hypot(span / 60, y(b) - y(a));
    }
    return sum;
  };
  let [low, high] = [0, lengthCm];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (along(middle) < lengthCm) low = middle;
    else high = middle;
  }
  const points = Array.from({ length: 61 }, (_, i) => {
    const x = boxCm * 0.03 + (span * i) / 60;
    return `${x.toFixed(2)},${(yCm + low * Math.sin((2 * Math.PI * waves * i) / 60)).toFixed(2)}`;
  });
  return `M${points.join('L')}`;
}

export function GrowthDrawing({ sheet, boxCm, onBox }: GrowthDrawingProps) {
  const { t, measure } = useSheet();
  const say = useSaying();
  const [move, setMove] = useState<MoveUp | null>(null);
  const last = sheet.length.series.at(-1)?.totalLengthCm ?? null;
  useEffect(() => {
    let wanted = true;
    void readMoveUp(sheet.id, boxCm).then((answer) => {
      if (wanted && answer.ok) setMove(answer.value.moveUp);
    });
    return () => {
      wanted = false;
    };
  }, [sheet, boxCm]);
  if (last === null) return <p className="lead">{t('sheet.noLength')}</p>;
  const cm = (value: number): string => measure.text('length', value / 100);
  const band = sheet.growth.band;
  const later = band ? [lengthAfterCm(band.slow, last, 365), lengthAfterCm(band.fast, last, 365)] : null;
  const wide = Math.max(boxCm, 20);
  const deep = wide / 2;
  const title = later
    ? `${t('sheet.now', { cm: cm(last) })}, ${t('sheet.inYear', { low: cm(later[0] ?? 0), high: cm(later[1] ?? 0) })}`
    : t('sheet.now', { cm: cm(last) });
  const movedSay = (found: MoveUp): string =>
    found.now
      ? t('sheet.moveNow')
      : found.earliest
        ? t('sheet.move', { earliest: say.day(found.earliest), likely: say.day(found.likely) || '–' })
        : t('sheet.moveNever');
  return (
    <figure className="animal-figure">
      <figcaption>
        <strong>{t('sheet.lengthPicture')}</strong>
        <span>{title}</span>
      </figcaption>
      <svg
        viewBox={`-4 -8 ${wide + 8} ${deep + 14}`}
        role="img"
        aria-label={`${t('sheet.lengthPicture')}: ${title}`}
        className="growth-drawing"
      >
        <rect x="0" y="0" width={wide} height={deep} className="growth-floor" />
        <path d={`M0 -4H${wide}M0 -6V-2M${wide} -6V-2`} className="growth-dimension" />
        {later && <path d={bodyPath(later[1] ?? last, wide, deep * 0.78)} className="growth-later" />}
        {later && <path d={bodyPath(later[0] ?? last, wide, deep * 0.5)} className="growth-later growth-slow" />}
        <path d={bodyPath(last, wide, deep * 0.22)} className="growth-now" />
        <ellipse cx={wide * 0.03} cy={deep * 0.22} rx="3.2" ry="2.2" className="growth-head" />
      </svg>
      {move && <p>{movedSay(move)}</p>}
      <p className="on-paper">
        {t('sheet.box')}: {cm(boxCm)}
      </p>
      <QuantityField
        label={t('sheet.box')}
        kind="length"
        value={boxCm / 100}
        min={0.2}
        max={4}
        digits={0}
        compact
        onChange={(m) => m !== null && onBox(Math.round(m * 100))}
      />
      <p className="field-hint">{t('sheet.growthNote')}</p>
    </figure>
  );
}
