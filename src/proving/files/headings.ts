// What does a column's heading say it holds? Words of several languages and loggers, units in or beside them.
import type { LogPlace, Quantity } from '../reading-log.ts';

export type ColumnSubject =
  | 'time'
  | 'tempC'
  | 'tempF'
  | 'temp'
  | 'rhPct'
  | 'dew'
  | 'powerW'
  | 'counter'
  | 'other'
  | null;

/** Subject of a heading; null when it says nothing known. */
export function subjectOf(heading: string): ColumnSubject {
  const h = heading.toLowerCase().trim();
  if (h === '') return null;
  if (/dew|taupunkt|ros[ée]e|abs.*hum|vpd|heat index/.test(h)) return 'dew';
  if (/^#$|^no\.?$|^nr\.?$|count|index|record|lfd|zähler|^id$|sample/.test(h)) return 'counter';
  if (
    /batt|volt|serial|serien|status|alarm|event|host|coupler|button|stopped|end of file|lux|co2|press|hpa|mbar/.test(h)
  )
    return 'other';
  if (/fahrenheit|°\s*f\b|deg\s*f|\(f\)|\[f\]|_f$|\bf$/.test(h) && !/humid|%/.test(h)) return 'tempF';
  if (/celsius|°\s*c\b|deg\s*c|\(c\)|\[c\]|_c$|\bc$/.test(h) && !/humid|%/.test(h)) return 'tempC';
  if (/humid|feucht|%\s*r?\.?h|r\.?h\.?\b|\brh|^h\d*$|hum\d*$|%/.test(h)) return 'rhPct';
  if (/watt|power|leistung|\(w\)|\[w\]/.test(h)) return 'powerW';
  if (/temp|^t\d*$|probe|sensor\s*\d|kanal|channel/.test(h)) return 'temp';
  if (/date|time|datum|zeit|uhr|stamp|epoch|fecha|heure/.test(h)) return 'time';
  return null;
}

/** Place named in a heading or a sensor's name; null when none is. */
export function placeOf(label: string): LogPlace | null {
  const t = label.toLowerCase();
  if (/room|ambient|raum|zimmer|outside|außen|aussen/.test(t)) return 'room';
  if (/bask|sonnen|spot/.test(t)) return 'basking-surface';
  const warm = /warm|hot\b|heiß|heiss/.test(t);
  const cool = /cool|cold|kühl|kuehl|kalt/.test(t);
  const hide = /hide|höhle|hoehle|versteck|box/.test(t);
  if (warm && hide) return 'warm-hide';
  if (cool && hide) return 'cool-hide';
  if (cool && /floor|boden|ground/.test(t)) return 'cool-floor';
  if (warm) return 'warm-air';
  if (cool) return 'cool-air';
  if (/perch|branch|ast\b/.test(t)) return 'perch';
  if (/probe|thermostat|fühler/.test(t)) return 'probe';
  return null;
}

/** Quantity of a subject; null for columns that are no readings. */
export const quantityOf = (subject: ColumnSubject): Quantity | null =>
  subject === 'rhPct' ? 'rhPct' : subject === 'powerW' ? 'powerW' : subject?.startsWith('temp') ? 'tempC' : null;
