// The sentences of `warmstead proof` in English and German. Reasons come from the proving room in English.
import { bookIn, type Language, said } from '../shared/languages.ts';

const en = {
  help: {
    proof: 'what readings of a home prove: understands logger files, fits the home, forecasts its worst nights',
    files: 'logger files (CSV, TSV, TXT); "-" reads standard input',
    enclosure: 'the enclosure file of the home, animal and all',
    place:
      'where a sensor lay, e.g. "Temp 1=basking-surface"; places: basking-surface, warm-air, warm-hide, cool-hide, cool-air, cool-floor, perch, probe, room',
    check:
      'what a sensor showed in melting ice, e.g. "Temp 1=0.4"; corrected by it, and trusted twice as far; may be given again',
    dates: 'order of dates of numbers: dmy, mdy or ymd; read off the file unless given',
    tempUnit: 'unit of the temperatures: C or F; read off the file unless given',
    clock: "hours the home's clock is ahead of universal time, for files that keep universal time",
    nights: 'nights that must be covered; the number unless given is our choice',
    humidity: 'humidity must be proven too',
    examples: [
      'warmstead proof log.csv --enclosure box.json',
      'warmstead proof warm.csv cool.csv --enclosure box.json --place "Temp 1=basking-surface"',
      'warmstead proof log.csv --enclosure box.json --check "Temp 1=0.4" --json',
    ],
    exit: '0 proven   1 failed   2 not proven   64 something is wrong with the input   70 failed on our side',
  },
  verdicts: { proven: '+ PROVEN', failed: 'x FAILED', 'not-proven': '? NOT PROVEN' },
  understood: 'What was understood',
  file: said<[name: string, rows: number, of: number, rejected: number]>(
    '{0}: {1} of {2} rows read{3, plural, =0 {} other {, # set aside}}',
  ),
  layout: (delimiter: string, dates: string, decimal: string, clock: string) =>
    `cells by ${delimiter}, dates ${dates}, decimal ${decimal}, clock: ${clock}`,
  span: (from: string, to: string, minutes: string) => `${from} to ${to}, every ${minutes} min`,
  channel: (label: string, place: string) => `${label}: ${place}`,
  unknownPlace: 'place not known',
  aside: {
    'no-time': 'without a time',
    'no-number': 'without a number',
    summary: 'summaries',
    'clock-reset': 'of a reset clock',
    empty: 'empty',
  },
  questions: 'To be answered',
  why: 'Why',
  next: 'Next',
  needs: 'By the readings',
  states: { held: '+ held', failed: 'x fails', open: '? open', 'not-read': '? not read' },
  forecast: 'Forecast, median and 90 % interval',
  moments: {
    'coldest-night': 'coldest night',
    'coldest-day': 'coldest day',
    'hottest-day': 'hottest day',
    'hottest-night': 'hottest night',
  },
  room: (temp: string) => `room ${temp}`,
  learned: 'What the readings could and could not say about the home',
  marks: { settled: 'settled', partly: 'partly', open: 'still open' },
  widthLeft: (pct: string) => `${pct} of the doubt left`,
  more: 'One more reading that would help',
  suspects: 'Looks like',
  basis: (rule: string) => `Rule: ${rule}`,
  model: 'A forecast is a model fitted to these readings, not a measurement.',
} as const;

type Widen<T> = T extends string
  ? string
  : T extends (...a: infer A) => string
    ? (...a: A) => string
    : T extends readonly string[]
      ? readonly string[]
      : { readonly [K in keyof T]: Widen<T[K]> };
export type ProofMessages = Widen<typeof en>;

const de: ProofMessages = {
  help: {
    proof:
      'was Messwerte eines Heims nachweisen: versteht Loggerdateien, passt das Heim an, sagt seine schlimmsten Nächte voraus',
    files: 'Loggerdateien (CSV, TSV, TXT); "-" liest die Standardeingabe',
    enclosure: 'die Terrariendatei des Heims samt Tier',
    place:
      'wo ein Fühler lag, z. B. "Temp 1=basking-surface"; Orte: basking-surface, warm-air, warm-hide, cool-hide, cool-air, cool-floor, perch, probe, room',
    check:
      'was ein Fühler in schmelzendem Eis zeigte, z. B. "Temp 1=0.4"; er wird danach berichtigt und gilt doppelt so genau; auch mehrmals',
    dates: 'Reihenfolge von Datumszahlen: dmy, mdy oder ymd; ohne Angabe der Datei entnommen',
    tempUnit: 'Einheit der Temperaturen: C oder F; ohne Angabe der Datei entnommen',
    clock: 'Stunden, um die die Uhr im Heim der Weltzeit voraus ist, für Dateien in Weltzeit',
    nights: 'Nächte, die gemessen sein müssen; die Zahl ohne Angabe ist unsere Wahl',
    humidity: 'auch die Feuchte muss nachgewiesen sein',
    examples: en.help.examples,
    exit: '0 nachgewiesen   1 gescheitert   2 nicht nachgewiesen   64 Eingabe fehlerhaft   70 Fehler bei uns',
  },
  verdicts: { proven: '+ NACHGEWIESEN', failed: 'x GESCHEITERT', 'not-proven': '? NICHT NACHGEWIESEN' },
  understood: 'So verstanden',
  file: said('{0}: {1} von {2} Zeilen gelesen{3, plural, =0 {} other {, # beiseite gelegt}}', 'de'),
  layout: (delimiter, dates, decimal, clock) =>
    `Zellen durch ${delimiter}, Datum ${dates}, Komma ${decimal}, Uhr: ${clock}`,
  span: (from, to, minutes) => `${from} bis ${to}, alle ${minutes} min`,
  channel: (label, place) => `${label}: ${place}`,
  unknownPlace: 'Ort nicht bekannt',
  aside: {
    'no-time': 'ohne Zeit',
    'no-number': 'ohne Zahl',
    summary: 'Zusammenfassungen',
    'clock-reset': 'einer zurückgesetzten Uhr',
    empty: 'leer',
  },
  questions: 'Zu beantworten',
  why: 'Warum',
  next: 'Als Nächstes',
  needs: 'Nach den Messwerten',
  states: { held: '+ hält', failed: 'x hält nicht', open: '? offen', 'not-read': '? nicht gemessen' },
  forecast: 'Vorhersage, Median und 90-%-Bereich',
  moments: {
    'coldest-night': 'kälteste Nacht',
    'coldest-day': 'kältester Tag',
    'hottest-day': 'heißester Tag',
    'hottest-night': 'heißeste Nacht',
  },
  room: (temp) => `Raum ${temp}`,
  learned: 'Was die Messwerte über das Heim sagen und was nicht',
  marks: { settled: 'geklärt', partly: 'teils', open: 'noch offen' },
  widthLeft: (pct) => `${pct} des Zweifels bleiben`,
  more: 'Ein Messwert mehr, der hilft',
  suspects: 'Sieht aus wie',
  basis: (rule) => `Regel: ${rule}`,
  model: 'Eine Vorhersage ist ein an diese Messwerte angepasstes Modell, keine Messung.',
};

export const proofMessages = (language: Language): ProofMessages =>
  bookIn<ProofMessages>('terminal.proof', language, { en, de });
