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
  'pack.makeNew': 'Neue Mappe nach heutigem Stand erstellen',
  'pack.given': 'Wie ausgegeben',
  'pack.givenSay':
    'Die Dateien selbst, aufbewahrt, wie sie erstellt wurden: Eine weitere Kopie ist dasselbe Papier, was sich auch geändert hat.',
  'pack.givenOn': 'Wie ausgegeben am {on} von {by}: {language}, {units}',
  'pack.draftOn': 'Entwurf vom {on} von {by}: {language}, {units}',
  'pack.givenErased': 'die Datei ging mit den gelöschten Worten des Käufers',
  'pack.givenHash': 'SHA-256 {hash}',
  'pack.copy': 'Diese Kopie öffnen',
  'pack.differs': 'Was ist heute anders?',
  'pack.differsNot': 'Nichts: Eine heute erstellte Mappe sagte dasselbe.',
  'pack.differsIn': 'Eine heute erstellte Mappe wäre hier anders:',
  'pack.wasSaid': 'Ausgegeben:',
  'pack.nowSaid': 'Heute:',
  'pack.busy': 'Wärme, Stromausfall und Hitzewelle werden für genau dieses Terrarium gerechnet …',
  'pack.ready': 'Die Mappe ist fertig.',
  'pack.open': 'Mappe öffnen',
  'pack.save': 'Speichern',
  'pack.file': 'mappe',
};
