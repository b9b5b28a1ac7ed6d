// Reasons about an animal in English; de.ts must hold the same keys and blanks. Numbers come with their unit here.

export const en = {
  'mass.tooFew': 'Fewer than two masses: weigh it again.',
  'mass.steady': '{last} g on {lastOn}; no loss against its best ({best} g, {bestOn}).',
  'mass.watch': '{pct} % under its best ({best} g on {bestOn}). Weigh weekly.',
  'mass.alarm': '{pct} % lost: {best} g on {bestOn}, {last} g on {lastOn}. Hold it and ask a vet.',
  'mass.rest.winter': '{pct} % lost during winter rest. Not judged; weigh weekly.',
  'mass.rest.laying': '{pct} % lost round egg-laying. Not judged; weigh weekly.',
  'mass.rest.birth': '{pct} % lost round birth. Not judged; weigh weekly.',

  'feed.afterUp': 'Brought a meal up: no food before {until}.',
  'feed.afterMove': 'Just moved: no food before {until}.',
  'feed.slough': 'In slough since {since}: no feeding trial.',
  'feed.refused': 'Refused {n} times in a row: look at warmth, hides, slough, season; weigh it.',
  'feed.winter': 'Many eat less in winter.',
  'feed.upTwice': 'Brought up two meals within the time of the rule: vet now, no food.',
  'feed.notSinceUp': 'Has not kept a meal since it brought one up.',
  'feed.noStage': 'Length or mass is missing, so that the interval is not known.',
  'feed.fewMeals': '{n} of {wanted} meals on record that it kept.',
  'feed.feeds': 'Feeds; last meal kept on {on}.',

  'exam.none': 'Nobody has looked it over yet.',
  'exam.old': 'Looked over on {on}; older than {days} days.',
  'exam.unfinished': 'The look-over of {on} is not finished.',
  'exam.hold': 'Held at the look-over of {on}: {n} sign(s).',
  'exam.vet': 'For the vet since the look-over of {on}: {n} sign(s).',
  'exam.fit': 'Looked over on {on}: nothing that holds it.',

  'slough.none': 'Not in slough.',
  'slough.underWay': 'In slough since {since}: no sale, no feeding trial.',
  'slough.pieces': 'Skin came off in pieces on {since}: look it over again.',
  'slough.justOff': 'Skin came off on {since}: leave it in peace for a day.',

  'quarantine.none': 'Not in quarantine.',
  'quarantine.days': 'Quarantine: day {done} of {wanted}, over on {overOn}.',
  'quarantine.tests': 'Quarantine: tests open: {open}.',
  'quarantine.noTests': 'Quarantine by tests, but no test is named: ask the vet which.',
  'quarantine.mayEnd': 'The quarantine has run its time or tests. Somebody must end it.',

  'mites.none': 'No mites on record.',
  'mites.watch': 'Mites last seen on {on}: watch until {overOn}, {left} days left.',
  'mites.over': 'Mites last seen on {on}; the watch is over since {overOn}.',

  'treatment.none': 'Not under treatment.',
  'treatment.blocked': 'Under treatment since {since}: the law here forbids the sale.',
  'treatment.vetAdvice': 'Under treatment since {since}: only on a vet’s written word, and the buyer is told first.',
  'treatment.noRule': 'Under treatment since {since}. No rule of this place was read: held (our choice).',

  'settled.unknown': 'The day it came is not in the register.',
  'settled.tooShort': 'Here for {days} of {wanted} days.',
  'settled.enough': 'Here for {days} days.',

  'round.notSeen': 'Not seen.',
  'round.look': 'Look: {note}',
  'round.unlocked': 'Not locked.',
  'round.noWater': 'No fresh water.',
  'round.warmAirC.low': 'Warm end {value} °C, wanted {low} to {high} °C.',
  'round.warmAirC.high': 'Warm end {value} °C, wanted {low} to {high} °C.',
  'round.coolAirC.low': 'Cool end {value} °C, wanted {low} to {high} °C.',
  'round.coolAirC.high': 'Cool end {value} °C, wanted {low} to {high} °C.',
  'round.rhPct.low': 'Humidity {value} %, wanted {low} to {high}.',
  'round.rhPct.high': 'Humidity {value} %, wanted {low} to {high}.',

  'triage.flag': 'A sign that does not wait.',
  'triage.loss': '{pct} % of its mass is lost.',
  'triage.noComplaint': 'Ask first what it is.',
  'triage.noCare': 'Nothing to try at home: keep it apart and see the vet.',
  'triage.tooLong': 'Tried for {days} days; {most} are enough.',
  'triage.enclosure': 'Put the enclosure right first: {n} thing(s) explain it.',
  'triage.open': '{n} thing(s) not read or asked yet.',
  'triage.care': 'The enclosure is right. Simple outside care, at most {most} days, then the vet.',
} as const;

export type ReasonKey = keyof typeof en;
