// The words of `warmstead plan --search`, `--faults` and `--stages` in English and German. Findings come from the planning
// room in English.
import type { HarmKind } from '../planning/faults/harm-lines.ts';
import type { Language } from './display.ts';

const en = {
  help: {
    search: 'find kits of the shelf for this home: what holds, what it costs, why others fell out',
    faults: 'rehearse what can go wrong on this plan: hours until harm, what would show it, what stops it',
    stages: 'boxes as the animal grows, against the adult box at once',
    shelf: 'the shop’s shelf, JSON or CSV; the starter shelf with invented prices unless named',
    tariff: 'price of a kWh in the shelf’s currency',
    years: 'over how many years costs count, 1 to 30',
    own: 'heaters and thermostats in the file are the customer’s own and cost nothing',
  },
  choices: 'Kits',
  none: 'None holds',
  chance: (pct: string) => `${pct} of the versions hold in the worse season`,
  weakest: (title: string, margin: string) => `weakest: ${title} (${margin})`,
  parts: 'parts',
  dial: (day: string, night: string) => `dial ${day} by day, ${night} by night`,
  expect: (basking: string, hide: string, cool: string) =>
    `expect ${basking} at the basking surface by day, ${hide} in the warm hide by night, ${cool} at the cool end`,
  cost: (years: number, total: string, kit: string, lamps: string, energy: string, kWh: string) =>
    `${years} years: ${total} (kit ${kit}, replacements ${lamps}, power ${energy}; ${kWh} kWh a year)`,
  changes: {
    insulated: 'foam outside',
    'mesh-covered': 'mesh covered four fifths',
    'vents-halved': 'vents half shut',
    'vents-doubled': 'vents twice as large',
  },
  fellOut: (count: number) => `Cheaper, but (${count} in all):`,
  refused: (count: number) => `Not allowed (${count} kits):`,
  helps: 'What would help',
  home: 'Not for a heater to mend',
  work: (kits: number, solved: number, all: number) =>
    `${kits} kits tried; ${solved} of ${all} versions solved, the others could change nothing.`,
  invented: 'Prices of this shelf are invented.',
  tariff: (value: string, currency: string) => `Power at ${value} ${currency} a kWh.`,
  faults: 'What can go wrong, worst first',
  lines: {
    'too-hot': 'no cool place left',
    burns: 'a surface that burns',
    'too-cold': 'no warm place left',
    'too-dry': 'air too dry',
    'too-damp': 'air too damp',
  } satisfies Record<HarmKind, string>,
  harmless: (hours: number) => `crosses no line within ${hours} hours`,
  after: (what: string, hours: string, share: string) => `${what} after ${hours} (${share} of the versions)`,
  shows: (basking: string, cool: string, probe: string) =>
    `at worst: basking ${basking}, cool end ${cool}, thermostat shows ${probe}`,
  alarm: (instrument: string, reading: string, hours: string) => `told by: ${instrument} at ${reading}, after ${hours}`,
  noAlarm: 'no thermometer would have told in time',
  stops: 'stops it',
  delays: (hours: string, worst: string) => `does not stop it (${hours}, at worst ${worst})`,
  skipped: 'Not on this plan',
  cut: 'Power cut on the coldest night',
  cutHours: (hours: string, room: string) =>
    `The warmest place is below what the animal needs after ${hours} in a room of ${room}.`,
  cutNever: 'The warmest place stays within what the animal needs for a day.',
  cutFoam: (hours: string) => `With foam round the box: ${hours}.`,
  stages: 'Boxes as the animal grows',
  atOnce: 'The adult box at once',
  stage: (box: string, from: string, to: string) => `${box}: year ${from} to ${to}`,
  outgrown: (low: string, median: string, high: string) => `outgrown in ${median} years (${low} to ${high})`,
  outgrownOpen: (low: string, median: string) => `outgrown in ${median} years (${low} at the soonest)`,
  serves: 'serves for good',
  bought: 'buy',
  again: 'use again',
  cover: (price: string) => `more cover for a young animal: ${price}`,
  growthRead: (years: string) =>
    `Growth by the age at maturity on record (${years} years); feeding decides most of it.`,
  growthChosen: 'No age at maturity is on record for this species; the rate of growth is our choice.',
  years: 'years',
  h: (v: string) => `${v} h`,
};

export type ChooseWords = typeof en;

const de: ChooseWords = {
  help: {
    search: 'Ausstattung aus dem Regal für dieses Zuhause suchen: was hält, was es kostet, warum anderes ausschied',
    faults:
      'durchspielen, was an diesem Plan ausfallen kann: Stunden bis zum Schaden, woran man es sieht, was es aufhält',
    stages: 'Behälter, während das Tier wächst, gegen den großen Behälter sofort',
    shelf: 'das Regal des Ladens, JSON oder CSV; sonst das Startregal mit erfundenen Preisen',
    tariff: 'Preis einer kWh in der Währung des Regals',
    years: 'über wie viele Jahre Kosten zählen, 1 bis 30',
    own: 'Heizer und Thermostate der Datei gehören dem Kunden und kosten nichts',
  },
  choices: 'Ausstattungen',
  none: 'Keine hält',
  chance: (pct) => `${pct} der Varianten halten in der schlechteren Jahreszeit`,
  weakest: (title, margin) => `am schwächsten: ${title} (${margin})`,
  parts: 'Teile',
  dial: (day, night) => `Regler am Tag ${day}, nachts ${night}`,
  expect: (basking, hide, cool) =>
    `zu erwarten: ${basking} am Sonnenplatz am Tag, ${hide} im warmen Versteck nachts, ${cool} am kühlen Ende`,
  cost: (years, total, kit, lamps, energy, kWh) =>
    `${years} Jahre: ${total} (Ausstattung ${kit}, Ersatz ${lamps}, Strom ${energy}; ${kWh} kWh im Jahr)`,
  changes: {
    insulated: 'außen gedämmt',
    'mesh-covered': 'Gitter zu vier Fünfteln abgedeckt',
    'vents-halved': 'Lüftung halb geschlossen',
    'vents-doubled': 'Lüftung doppelt so groß',
  },
  fellOut: (count) => `Günstiger, aber (${count} insgesamt):`,
  refused: (count) => `Nicht erlaubt (${count} Ausstattungen):`,
  helps: 'Was helfen würde',
  home: 'Was kein Heizer ändert',
  work: (kits, solved, all) =>
    `${kits} Ausstattungen geprüft; ${solved} von ${all} Varianten gerechnet, die übrigen konnten nichts ändern.`,
  invented: 'Die Preise dieses Regals sind erfunden.',
  tariff: (value, currency) => `Strom zu ${value} ${currency} je kWh.`,
  faults: 'Was ausfallen kann, das Schlimmste zuerst',
  lines: {
    'too-hot': 'kein kühler Platz mehr',
    burns: 'eine Fläche, die verbrennt',
    'too-cold': 'kein warmer Platz mehr',
    'too-dry': 'zu trockene Luft',
    'too-damp': 'zu feuchte Luft',
  },
  harmless: (hours) => `überschreitet in ${hours} Stunden keine Grenze`,
  after: (what, hours, share) => `${what} nach ${hours} (${share} der Varianten)`,
  shows: (basking, cool, probe) =>
    `am schlimmsten: Sonnenplatz ${basking}, kühles Ende ${cool}, der Thermostat zeigt ${probe}`,
  alarm: (instrument, reading, hours) => `gemeldet von: ${instrument} bei ${reading}, nach ${hours}`,
  noAlarm: 'kein Thermometer hätte es rechtzeitig gemeldet',
  stops: 'hält es auf',
  delays: (hours, worst) => `hält es nicht auf (${hours}, schlimmstenfalls ${worst})`,
  skipped: 'Trifft diesen Plan nicht',
  cut: 'Stromausfall in der kältesten Nacht',
  cutHours: (hours, room) => `Der wärmste Platz liegt nach ${hours} unter dem Bedarf des Tieres, bei ${room} im Raum.`,
  cutNever: 'Der wärmste Platz bleibt einen Tag lang im Bedarf des Tieres.',
  cutFoam: (hours) => `Mit Dämmung um den Behälter: ${hours}.`,
  stages: 'Behälter, während das Tier wächst',
  atOnce: 'Der große Behälter sofort',
  stage: (box, from, to) => `${box}: Jahr ${from} bis ${to}`,
  outgrown: (low, median, high) => `zu klein in ${median} Jahren (${low} bis ${high})`,
  outgrownOpen: (low, median) => `zu klein in ${median} Jahren (frühestens ${low})`,
  serves: 'reicht auf Dauer',
  bought: 'kaufen',
  again: 'weiter nutzen',
  cover: (price) => `mehr Deckung für ein junges Tier: ${price}`,
  growthRead: (years) =>
    `Wachstum nach dem bekannten Alter der Reife (${years} Jahre); die Fütterung entscheidet das meiste.`,
  growthChosen: 'Für diese Art ist kein Alter der Reife verzeichnet; die Wachstumsrate ist unsere Wahl.',
  years: 'Jahre',
  h: (v) => `${v} h`,
};

export const chooseWords = (language: Language): ChooseWords => (language === 'de' ? de : en);
