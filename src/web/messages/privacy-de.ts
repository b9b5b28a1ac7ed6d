// Words of what is kept of a buyer, in German.
import type { privacyEn } from './privacy-en.ts';

export const privacyDe: Record<keyof typeof privacyEn, string> = {
  'privacy.title': 'Was über den Käufer aufbewahrt wird',
  'privacy.lead':
    'Bezeichnung, Angaben, Begründungen, Notizen aus Anrufen und Nachsorge, Dateinamen: alles, was in eigenen Worten geschrieben wurde.',
  'privacy.show': 'Zeigen, was aufbewahrt wird',
  'privacy.none': 'In eigenen Worten ist nichts aufbewahrt.',
  'privacy.save': 'Alles als Datei sichern (JSON)',
  'privacy.part.enquiry': 'Anfrage',
  'privacy.part.plans': 'Plan',
  'privacy.part.proofs': 'Nachweis',
  'privacy.part.placements': 'Vermittlung',
  'privacy.part.events': 'Vermittlung',
  'privacy.part.calls': 'Anruf',
  'privacy.part.handReadings': 'Messwerte von Hand',
  'privacy.part.readingFiles': 'Loggerdatei',
  'privacy.part.liveSources': 'Laufende Messung',
  'privacy.part.packs': 'Mappe',
  'privacy.part.keeperLinks': 'Link des Halters',
  'privacy.erase': 'Käufer löschen',
  'privacy.warning':
    'Das lässt sich nicht rückgängig machen. Eigene Worte und Links verschwinden aus allen Vermittlungen in dieses Heim, und nichts kann mehr dazugeschrieben werden. Die Akte des Tiers, die Zahlen des Heims und der Inhalt von Loggerdateien bleiben.',
  'privacy.beyond':
    'Von hier aus nicht erreicht: frühere Sicherungen, gedruckte Blätter, Entwürfe auf anderen Geräten, andere Einträge im Bestandsbuch des Tiers als Anrufe.',
  'privacy.open': 'Zuerst das Tier abgeben oder den Verkauf ablehnen; dann kann der Käufer gelöscht werden.',
  'privacy.reason': 'Warum (mindestens {n} Buchstaben; wird aufbewahrt, also ohne den Namen der Person)',
  'privacy.sure': 'Der Käufer hat bekommen, worum er gebeten hat, oder möchte nichts.',
  'privacy.do': 'Endgültig löschen',
  'privacy.done': 'Die eigenen Worte des Käufers wurden am {on} von {by} gelöscht: {reason}',
  'privacy.due.title': 'Anfragen, die zu löschen sind',
  'privacy.due.lead':
    'Kein Tier wurde vermittelt, und seit {n} Tagen hat sich nichts geändert (unsere Wahl; kein gelesenes Gesetz nennt eine Zahl): {count}.',
  'privacy.due.none':
    'Keine Anfrage ist fällig: Ohne Vermittlung werden sie nach der letzten Änderung {n} Tage aufbewahrt (unsere Wahl).',
  'privacy.due.warning':
    'Das lässt sich nicht rückgängig machen. Bezeichnungen und Notizen verschwinden, die Zahlen bleiben.',
  'privacy.due.do': 'Alle in dieser Liste löschen',
  'privacy.due.unnamed': 'ohne Bezeichnung',
};
