// Every mass over time with the line of the loss alarm under the animal's own best; a table behind it.
import { dayNumber } from '../../animal/calendar.ts';
import { shownFromStored } from '../settings/measure.ts';
import { useSheet } from '../settings/settings-context.tsx';
import type { AnimalSheet } from './animal-api.ts';
import { useSaying } from './say.ts';

const [width, height] = [320, 150];

export function MassDrawing({ sheet }: { readonly sheet: AnimalSheet }) {
  const { t, measure, settings } = useSheet();
  const say = useSaying();
  const { series, finding } = sheet.mass;
  const { check, index } = sheet.length;
  if (series.length === 0) return null;
  const days = series.map((point) => dayNumber(point.on));
  const [first = 0, last = 0] = [Math.min(...days), Math.max(...days, dayNumber(sheet.today))];
  const best = finding.best?.massG ?? Math.max(...series.map((point) => point.massG));
  const top = Math.max(...series.map((point) => point.massG)) * 1.08;
  const bottom = Math.min(best * 0.85, ...series.map((point) => point.massG * 0.96));
  const x = (day: number): number => 34 + ((width - 46) * (day - first)) / Math.max(1, last - first);
  const y = (massG: number): number => 10 + ((height - 34) * (top - massG)) / Math.max(1e-9, top - bottom);
  const points = series.map((point) => `${x(dayNumber(point.on)).toFixed(1)},${y(point.massG).toFixed(1)}`);
  const finding1 = finding.reasons.map(say.reason).join(' ');
  const g = (value: number): string => measure.text('mass', value, value < 20 ? 1 : 0);
  return (
    <figure className="animal-figure">
      <figcaption>
        <strong>{t('sheet.massPicture')}</strong>
        <span>{finding1}</span>
      </figcaption>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`${t('sheet.massPicture')}: ${finding1} −10 %: ${g(best * 0.9)}`}
        className="mass-drawing"
      >
        <path d={`M34 ${height - 20}H${width - 8}M34 8V${height - 20}`} className="growth-dimension" />
        <path d={`M34 ${y(best)}H${width - 8}`} className="mass-best" />
        <path d={`M34 ${y(best * 0.9)}H${width - 8}`} className="mass-alarm" />
        <text x={width - 8} y={y(best * 0.9) - 3} textAnchor="end" className="mass-word">
          −10 %
        </text>
        {points.length > 1 && <path d={`M${points.join('L')}`} className="mass-line" />}
        {series.map((point, i) => (
          <circle
            key={`${point.on}-${String(i)}`}
            cx={x(dayNumber(point.on))}
            cy={y(point.massG)}
            r="3"
            className="mass-point"
          />
        ))}
        <text x="30" y={y(best) + 3} textAnchor="end" className="mass-word">
          {measure.number(shownFromStored('mass', best, settings), settings.mass === 'oz' ? 1 : 0)}
        </text>
        <text x="34" y={height - 6} className="mass-word">
          {say.day(series[0]?.on)}
        </text>
        <text x={width - 8} y={height - 6} textAnchor="end" className="mass-word">
          {say.day(sheet.today)}
        </text>
      </svg>
      {check && (
        <p className="field-hint">
          {t(check.plausible ? 'sheet.sizeFine' : 'sheet.sizeOdd', { low: g(check.lowG), high: g(check.highG) })}
        </p>
      )}
      {index && (
        <p className="field-hint">
          {t('sheet.scaled', {
            g: g(index.scaledG),
            cm: measure.text('length', index.meanLengthMm / 1000),
            n: index.animals,
            b: measure.number(index.exponent, 2),
          })}
        </p>
      )}
      <details>
        <summary>{t('sheet.massTable')}</summary>
        <table className="plain-table">
          <tbody>
            {series.map((point, i) => (
              <tr key={`${point.on}-${String(i)}`}>
                <th scope="row">{say.day(point.on)}</th>
                <td>{g(point.massG)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
}
