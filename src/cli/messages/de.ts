// Every sentence of the terminal program in German; the type demands that none is missing.
import type { PlaceId } from '../../physics/answer.ts';
import type { Messages, Season } from './en.ts';

const places: Readonly<Record<PlaceId, string>> = {
  'basking-surface': 'Sonnenplatz, Fläche',
  'basking-spot': 'heißester Sonnenfleck',
  'warm-air': 'Luft warmes Ende',
  'warm-hide': 'warmes Versteck',
  'cool-hide': 'kühles Versteck',
  'cool-air': 'Luft kühles Ende',
  'cool-floor': 'Boden kühles Ende',
  perch: 'Ast',
  probe: 'Fühler',
  'front-glass': 'Frontscheibe',
  'hottest-reachable': 'Heißestes in Reichweite',
  'heater-surface': 'Heizung, Oberfläche',
};

export const de: Messages = {
  places,
  verdicts: { holds: 'ERFÜLLT', fails: 'VERFEHLT', 'not-known': 'OFFEN' },
  season: (season: Season): string => (season === 'winter' ? 'kältester Tag' : 'heißester Tag'),

  help: {
    usage: 'Aufruf:',
    arguments: 'Angaben:',
    options: 'Optionen:',
    commands: 'Befehle:',
    examples: 'Beispiele:',
    exit: 'Rückgabewerte:',
    about:
      'Taugt dieses beheizte Zuhause in diesem Zimmer, im Winter und im Sommer? Antwortet aus einer Datei, ohne Datenbank.',
    file: 'Terrariendatei (JSON, docs/formats.md); "-" liest die Standardeingabe',
    plan: 'Urteil zu jedem Bedarf des Tieres, Temperaturen, Regler, Leistung und Temperaturkarte',
    simulate: 'Temperaturen und Leistung ohne Urteil, eingeschwungen oder über einen Tag',
    check: 'ist die Datei in Ordnung? Nennt alle Fehler auf einmal',
    json: 'JSON für andere Programme ausgeben',
    csv: 'CSV für eine Tabelle ausgeben',
    members: 'wie viele mögliche Kästen gerechnet werden, 10 bis 2000',
    seed: 'Startwert ihrer Zufallsziehung, 0 bis 4294967295',
    species: 'für diese Art urteilen statt für die in der Datei',
    standard:
      'Platzvorschrift, eine Kennung aus data/standards.json oder none; ohne Angabe das Heim-Mindestmaß (home-third)',
    stage: 'hatchling (Schlüpfling), young (jung) oder adult (erwachsen)',
    shopValues: 'eigene Werte des Ladens, eine am Pult ausgegebene Datei (docs/formats.md)',
    brief: 'erfüllten Bedarf weglassen',
    map: 'welche Temperaturkarten: winter, summer, both (beide) oder none (keine)',
    steady: 'eingeschwungener Zustand bei gleichbleibendem Zimmer',
    night: 'mit den Nachtwerten und ohne Tagheizer',
    room: 'Zimmertemperatur für --steady',
    rh: 'relative Feuchte des Zimmers in Prozent',
    sun: 'Sonne außen auf der Front, W/m²',
    day: 'ein Tag aus der Datei: winter oder summer',
    low: 'tiefste Zimmertemperatur eines eigenen Tages',
    high: 'höchste Zimmertemperatur eines eigenen Tages',
    watts: 'feste Leistung, eine Zahl je Heizung, Komma dazwischen; ohne Thermostat',
    units: 'Einheiten der Anzeige und Eingabe: metric oder us',
    lang: 'Sprache: en oder de',
    helpOption: 'diese Hilfe zeigen',
    version: 'Version zeigen',
    examplesPlan: [
      'warmstead plan data/examples/wood-1200.json --lang de',
      'warmstead plan kasten.json --species royal --stage adult',
      'warmstead plan kasten.json --json --members 200 --seed 7 > antwort.json',
      'cat kasten.json | warmstead plan - --map none',
    ],
    examplesSimulate: [
      'warmstead simulate data/examples/wood-1200.json --steady --room 17 --rh 45 --json',
      'warmstead simulate kasten.json --steady --room 20 --watts 100 --csv',
      'warmstead simulate kasten.json --day winter --csv > tag.csv',
      'warmstead simulate kasten.json --low 16 --high 24 --json',
    ],
    examplesCheck: ['warmstead check kasten.json', 'warmstead check - --json < kasten.json'],
    exitPlan: '0 jeder Bedarf erfüllt   1 ein Bedarf verfehlt   2 offen   64 an der Eingabe stimmt etwas nicht',
    exitOther: '0 erledigt   64 an der Eingabe stimmt etwas nicht',
    more: 'warmstead BEFEHL --help zeigt Optionen und Beispiele eines Befehls.',
  },

  check: {
    sound: (file) => `${file} ist eine einwandfreie Terrariendatei.`,
    faults: (count, file) => (count === 1 ? `1 Fehler in ${file}:` : `${count} Fehler in ${file}:`),
    standardInput: 'der Standardeingabe',
    commandLine: 'der Befehlszeile',
    allowed: 'erlaubt',
  },

  own: {
    title: 'Eigene Werte des Ladens in dieser Antwort',
    sign: 'eigener Wert des Ladens',
    said: (by, on, why) => `von ${by}, ${on}: ${why}`,
    shipped: (value) => `(mitgeliefert: ${value})`,
    refused: 'nicht verwendet, weil die Daten ihn nicht mehr zulassen.',
    range: (low, high) => `${low} bis ${high}`,
  },

  plan: {
    needs: 'Bedarf',
    wanted: 'gewünscht',
    settle: 'was es klären würde',
    temperatures: 'Temperaturen, Median und 90-%-Bereich',
    place: 'Ort',
    winterNight: (room) => `Winternacht, Zimmer ${room}`,
    winterDay: (room) => `Wintertag, Zimmer ${room}`,
    midDay: (room) => `Tag dazwischen, Zimmer ${room}`,
    summerDay: (room) => `Sommertag, Zimmer ${room}`,
    dial: 'Regler',
    dialSet: (id, day, night) => `${id}: bei Tag auf ${day}, bei Nacht auf ${night}`,
    dialAdvised: (value) => `Empfehlung bei Tag: ${value}`,
    dialNone: 'keine Stellung dieses Reglers erreicht den gewünschten Sonnenplatz',
    dialExpect: (basking, probe) => `zu erwarten: ${basking} am Sonnenplatz, ${probe} am Fühler`,
    power: 'Leistung',
    powerSeason: (season, watts, duty, kWh) =>
      `${season}: im Mittel ${watts}, ${duty} der eingebauten Leistung, ${kWh} am Tag`,
    powerYear: (kWh) => `im Jahr: ${kWh}`,
    map: (season, low, high) => `Temperaturkarte des Bodens, ${season}, Zimmer ${low} bis ${high}`,
    notes: 'Anmerkungen des Modells',
    othersHold: (count) => `${count} weitere sind erfüllt.`,
    memory: '* aus dem Gedächtnis, gängige Praxis oder unsere Wahl; keine Seite wurde dafür gelesen.',
    headline: (first, more) =>
      first === null
        ? 'Jede Anforderung ist im Winter, im Sommer und dazwischen erfüllt.'
        : `${first}${more > 0 ? ` und ${more} weitere` : ''}.`,
    celsiusReasons: 'Gründe in °C.',
    basis: (members, seed) =>
      `Antwort eines Modells über ${members} mögliche Kästen (Startwert ${seed}), keine Messung. Das leere Zuhause mit Messwerten prüfen, bevor das Tier einzieht.`,
  },

  map: {
    warmEnd: 'warmes Ende',
    coolEnd: 'kühles Ende',
    hour: 'Uhr',
    heater: 'Heizung',
    room: 'Zimmer',
    legend: {
      cold2: '3 K oder mehr zu kalt',
      cold1: 'zu kalt',
      wanted: 'gewünscht',
      basking: 'gewünscht, Sonnenplatz',
      warm1: 'zu warm',
      warm2: '3 K oder mehr zu warm',
    },
    fine: 'Der Boden ist überall und den ganzen Tag wie gewünscht.',
    mostly: 'Kein Ende ist länger zu kalt oder zu warm; einzelne Stellen sind es.',
    trouble: (kind, part, span) => {
      const where = part === 'middle' ? 'in der Mitte' : part === 'warm' ? 'am warmen Ende' : 'am kühlen Ende';
      return `${kind === 'cold' ? 'Zu kalt' : 'Zu warm'} ${where} ${span}.`;
    },
    allDay: 'den ganzen Tag',
    fromTo: (from, to) => `von ${from} bis ${to}`,
    ownScale: (low, high) => `Skala: ${low} bis ${high}`,
  },

  simulate: {
    steady: (room, rh) => `Eingeschwungen, Zimmer ${room}, ${rh} relative Feuchte`,
    day: (low, high) => `Ein Tag, Zimmer ${low} bis ${high}`,
    heaters: 'Heizungen',
    air: 'relative Feuchte, warmes und kühles Ende',
    dew: 'Tau auf der Frontscheibe',
    airChange: 'Luftwechsel je Stunde',
    balance: 'Rest der Wärmebilanz',
    lowest: 'tiefste',
    highest: 'höchste',
    yes: 'ja',
    no: 'nein',
    energy: 'Energie',
  },

  faults: {
    noFile: (name) => ({ say: `Die Datei ${name} gibt es nicht.`, fix: 'Pfad und Schreibweise prüfen.' }),
    notReadable: (name) => ({ say: `${name} lässt sich nicht lesen.`, fix: 'Die Rechte der Datei prüfen.' }),
    isFolder: (name) => ({ say: `${name} ist ein Ordner, keine Datei.`, fix: 'Eine JSON-Datei darin nennen.' }),
    empty: (name) => ({ say: `${name} ist leer.`, fix: 'Mit einer Datei aus data/examples/ anfangen.' }),
    tooLarge: (name) => ({
      say: `${name} ist zu groß für ein Terrarium.`,
      fix: 'Prüfen, ob es die richtige Datei ist.',
    }),
    notText: (name) => ({ say: `${name} ist kein Text in UTF-8.`, fix: 'Als JSON in UTF-8 speichern.' }),
    notJson: (line, column, found) => ({
      say:
        found === ''
          ? `Am Ende, Zeile ${line}, Spalte ${column}, hört es auf, JSON zu sein: etwas ist nicht geschlossen.`
          : `In Zeile ${line}, Spalte ${column}, bei ${found}, hört es auf, JSON zu sein.`,
      fix: 'Kurz davor fehlt ein Komma, ein Anführungszeichen oder eine Klammer, oder eines ist zu viel.',
    }),
    twice: (line, column, key) => ({
      say: `Der Schlüssel ${key} steht zweimal im selben Objekt, wieder in Zeile ${line}, Spalte ${column}.`,
      fix: 'Einen davon behalten.',
    }),
    number: (option) => ({
      say: `${option} braucht eine Zahl in seinen Grenzen.`,
      fix: 'Dezimalstellen mit Punkt schreiben.',
    }),
    choice: (option) => ({ say: `${option} kennt dieses Wort nicht.`, fix: 'Eines der erlaubten Wörter nehmen.' }),
    noAnimal: {
      say: 'Die Datei nennt kein Tier.',
      fix: '--species ID und --stage STAGE angeben oder "animal" ausfüllen.',
    },
    species: { say: 'Diese Art steht nicht in data/species/.', fix: 'Eine der genannten Kennungen nehmen.' },
    noLength: (species) => ({
      say: `Die übliche Länge von ${species} in diesem Alter ist nicht bekannt.`,
      fix: 'Die Länge in der Datei unter "animal" angeben.',
    }),
    together: (a, b) => ({ say: `${a} und ${b} passen nicht zusammen.`, fix: 'Eines davon behalten.' }),
    needs: (a, b) => ({ say: `${a} braucht auch ${b}.`, fix: `${b} ergänzen.` }),
    order: { say: 'Die tiefste Zimmertemperatur liegt über der höchsten.', fix: '--low und --high tauschen.' },
    wattsCount: (heaters) => ({
      say: `Die Datei hat ${heaters} Heizungen; --watts braucht für jede eine Zahl.`,
      fix: 'In der Reihenfolge der Datei mit Kommas dazwischen schreiben.',
    }),
    usage: (detail) => ({ say: detail, fix: 'warmstead --help zeigt, was es gibt.' }),
    data: {
      say: 'Eine Datei mit Fakten unter data/ ist beschädigt.',
      fix: 'npm run data ausführen oder das Programm neu einrichten.',
    },
    crash: (reference) => `Bei uns ist etwas fehlgeschlagen (${reference}). Die Eingabe wurde nicht beurteilt.`,
  },
};
