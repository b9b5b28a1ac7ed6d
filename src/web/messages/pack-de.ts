// Wörter der Mappe auf dem Blatt der Vermittlung, auf Deutsch; dieselben Schlüssel wie pack-en.ts.
import type { packEn } from './pack-en.ts';

export const packDe: Readonly<Record<keyof typeof packEn, string>> = {
  'pack.title': 'Mappe',
  'pack.lead': 'A4-Seiten für den Halter: dieses Tier, dieses Terrarium, dieser Regler; Schwarzweiß genügt.',
  'pack.leadDraft':
    'A4-Seiten für den Halter: dieses Tier, dieses Terrarium, dieser Regler. Bis zur Abgabe steht darauf, dass sie ein Entwurf ist.',
  'pack.language': 'Sprache der Mappe',
  'pack.units': 'Einheiten der Mappe',
  'pack.unitsSay': 'Wie der Halter sie liest. Auf Englisch steht bei Zoll der Monat vor dem Tag.',
  'pack.printed': 'Zuletzt erstellt am {on} von {by}: {language}, {units}.',
  'pack.make': 'Mappe erstellen',
  'pack.busy': 'Wärme, Stromausfall und Hitzewelle werden für genau dieses Terrarium gerechnet …',
  'pack.ready': 'Die Mappe ist fertig.',
  'pack.open': 'Mappe öffnen',
  'pack.save': 'Speichern',
  'pack.file': 'mappe',
};
