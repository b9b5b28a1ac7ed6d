// Reasons about an animal in German: the same keys and blanks as en.ts.
import type { ReasonKey } from './en.ts';

export const de: Readonly<Record<ReasonKey, string>> = {
  'mass.tooFew': 'Weniger als zwei Massen: noch einmal wiegen.',
  'mass.steady': '{last} g am {lastOn}; kein Verlust gegen den besten Wert ({best} g, {bestOn}).',
  'mass.watch': '{pct} % unter dem besten Wert ({best} g am {bestOn}). Wöchentlich wiegen.',
  'mass.alarm': '{pct} % verloren: {best} g am {bestOn}, {last} g am {lastOn}. Zurückhalten und den Tierarzt fragen.',
  'mass.rest.winter': '{pct} % in der Winterruhe verloren. Nicht bewertet; wöchentlich wiegen.',
  'mass.rest.laying': '{pct} % um die Eiablage verloren. Nicht bewertet; wöchentlich wiegen.',
  'mass.rest.birth': '{pct} % um die Geburt verloren. Nicht bewertet; wöchentlich wiegen.',

  'feed.afterUp': 'Mahlzeit ausgewürgt: kein Futter vor dem {until}.',
  'feed.afterMove': 'Gerade umgezogen: kein Futter vor dem {until}.',
  'feed.slough': 'In Häutung seit {since}: kein Fütterungsversuch.',
  'feed.refused': '{n}-mal nacheinander verweigert: Wärme, Verstecke, Häutung, Jahreszeit ansehen; wiegen.',
  'feed.winter': 'Viele fressen im Winter weniger.',
  'feed.upTwice': 'Zwei Mahlzeiten binnen der Frist ausgewürgt: sofort zum Tierarzt, kein Futter.',
  'feed.notSinceUp': 'Seit dem Auswürgen keine Mahlzeit behalten.',
  'feed.noStage': 'Länge oder Masse fehlt, der Abstand ist nicht bekannt.',
  'feed.fewMeals': '{n} von {wanted} behaltenen Mahlzeiten verzeichnet.',
  'feed.feeds': 'Frisst; letzte behaltene Mahlzeit am {on}.',

  'exam.none': 'Noch niemand hat es untersucht.',
  'exam.old': 'Untersucht am {on}; älter als {days} Tage.',
  'exam.unfinished': 'Die Untersuchung vom {on} ist nicht fertig.',
  'exam.hold': 'Zurückgehalten seit der Untersuchung vom {on}: {n} Zeichen.',
  'exam.vet': 'Für den Tierarzt seit der Untersuchung vom {on}: {n} Zeichen.',
  'exam.fit': 'Untersucht am {on}: nichts, was es zurückhält.',

  'slough.none': 'Nicht in Häutung.',
  'slough.underWay': 'In Häutung seit {since}: kein Verkauf, kein Fütterungsversuch.',
  'slough.pieces': 'Haut am {since} in Stücken abgegangen: noch einmal untersuchen.',
  'slough.justOff': 'Haut am {since} abgegangen: einen Tag in Ruhe lassen.',

  'quarantine.none': 'Nicht in Quarantäne.',
  'quarantine.days': 'Quarantäne: Tag {done} von {wanted}, zu Ende am {overOn}.',
  'quarantine.tests': 'Quarantäne: offene Tests: {open}.',
  'quarantine.noTests': 'Quarantäne nach Tests, aber keiner ist benannt: den Tierarzt fragen, welche.',
  'quarantine.mayEnd': 'Die Quarantäne hat ihre Zeit oder Tests erfüllt. Jemand muss sie beenden.',

  'mites.none': 'Keine Milben verzeichnet.',
  'mites.watch': 'Milben zuletzt am {on} gesehen: beobachten bis {overOn}, noch {left} Tage.',
  'mites.over': 'Milben zuletzt am {on} gesehen; die Beobachtung ist seit {overOn} vorbei.',

  'treatment.none': 'Nicht in Behandlung.',
  'treatment.blocked': 'In Behandlung seit {since}: das Recht hier verbietet den Verkauf.',
  'treatment.vetAdvice':
    'In Behandlung seit {since}: nur auf schriftliches Wort des Tierarztes, der Käufer erfährt es vorher.',
  'treatment.noRule': 'In Behandlung seit {since}. Keine Regel dieses Ortes gelesen: zurückgehalten (unsere Wahl).',

  'settled.unknown': 'Der Tag des Zugangs steht nicht im Register.',
  'settled.tooShort': 'Seit {days} von {wanted} Tagen hier.',
  'settled.enough': 'Seit {days} Tagen hier.',

  'round.notSeen': 'Nicht gesehen.',
  'round.look': 'Ansehen: {note}',
  'round.unlocked': 'Nicht verschlossen.',
  'round.noWater': 'Kein frisches Wasser.',
  'round.warmAirC.low': 'Warme Seite {value} °C, gewünscht {low} bis {high} °C.',
  'round.warmAirC.high': 'Warme Seite {value} °C, gewünscht {low} bis {high} °C.',
  'round.coolAirC.low': 'Kühle Seite {value} °C, gewünscht {low} bis {high} °C.',
  'round.coolAirC.high': 'Kühle Seite {value} °C, gewünscht {low} bis {high} °C.',
  'round.rhPct.low': 'Feuchte {value} %, gewünscht {low} bis {high}.',
  'round.rhPct.high': 'Feuchte {value} %, gewünscht {low} bis {high}.',

  'triage.flag': 'Ein Zeichen, das nicht wartet.',
  'triage.loss': '{pct} % der Masse sind verloren.',
  'triage.noComplaint': 'Erst fragen, worum es geht.',
  'triage.noCare': 'Nichts zu Hause versuchen: absondern und zum Tierarzt.',
  'triage.tooLong': 'Seit {days} Tagen versucht; {most} sind genug.',
  'triage.enclosure': 'Erst das Terrarium in Ordnung bringen: {n} Punkt(e) erklären es.',
  'triage.open': '{n} Punkt(e) noch nicht gemessen oder gefragt.',
  'triage.care': 'Das Terrarium stimmt. Einfache äußere Pflege, höchstens {most} Tage, dann der Tierarzt.',
};
