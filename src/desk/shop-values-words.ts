// The words of the page of a branch's own values.
export const shopValuesWords = {
  en: {
    title: 'Values of our own',
    lead: (shop: string, branch: string, day: string) =>
      `${shop}, ${branch}. Where this branch goes by another value than the shipped facts. Printed ${day}.`,
    standing: 'In use',
    none: 'This branch uses every value as it was shipped.',
    refused: 'Not used: the shipped facts no longer allow them',
    gone: 'Withdrawn',
    head: ['Value', 'Shipped', 'Ours', 'Who, when, why'],
    withdrawn: (by: string, day: string, why: string) => `; withdrawn by ${by}, ${day}: ${why}`,
    unknown: 'not known',
    to: 'to',
    stages: { all: 'every age', hatchling: 'hatchling', young: 'young', adult: 'adult' },
    notesTitle: 'How to read this',
    notes: [
      'The first column names the species, list or policy, the row and the quantity in the words of the screen.',
      'Every plan and proof that a value went into names it with the same words.',
      'Nothing is erased: a withdrawn value stays readable with who, when and why.',
    ],
  },
  de: {
    title: 'Eigene Werte',
    lead: (shop: string, branch: string, day: string) =>
      `${shop}, ${branch}. Wo diese Filiale nach einem anderen Wert geht als den mitgelieferten. Gedruckt ${day}.`,
    standing: 'In Gebrauch',
    none: 'Diese Filiale verwendet alle Werte, wie sie mitgeliefert sind.',
    refused: 'Nicht verwendet: die mitgelieferten Daten lassen sie nicht mehr zu',
    gone: 'Zurückgenommen',
    head: ['Wert', 'Mitgeliefert', 'Eigener', 'Wer, wann, warum'],
    withdrawn: (by: string, day: string, why: string) => `; zurückgenommen von ${by}, ${day}: ${why}`,
    unknown: 'nicht bekannt',
    to: 'bis',
    stages: { all: 'jedes Alter', hatchling: 'Schlüpfling', young: 'Jungtier', adult: 'ausgewachsen' },
    notesTitle: 'Lesehilfe',
    notes: [
      'Die erste Spalte nennt Art, Liste oder Regel, Zeile und Größe mit den Worten des Bildschirms.',
      'Jeder Plan und jeder Nachweis, in den ein Wert einging, nennt ihn mit denselben Worten.',
      'Nichts wird gelöscht: ein zurückgenommener Wert bleibt lesbar mit wer, wann und warum.',
    ],
  },
};

/** Why a value is not used, by code. On an English page the fault says it in its own words. */
export const shopValuesRefusals = {
  en: {
    OVERLAY_FACT: 'The shipped facts no longer have this value.',
    OVERLAY_PARTS: 'The shipped value has other parts now.',
    OVERLAY_WORD: 'The program does not know this word here.',
    OVERLAY_NUMBER: 'The number is outside its limits.',
    OVERLAY_LOOSER: 'Here a shop may ask for more caution than was shipped, never for less.',
    OVERLAY_UNSIGNED: 'Who set it, when and why is missing.',
    DATA_FORM: 'The value does not have the form it should.',
    DATA_MISSING: 'A value that is needed is missing.',
    DATA_RANGE: 'There can be no such number.',
    DATA_ORDER: 'The value contradicts another one of this row.',
    other: 'The shipped facts no longer allow it.',
  } as Readonly<Record<string, string>>,
  de: {
    OVERLAY_FACT: 'Diesen Wert gibt es in den mitgelieferten Daten nicht mehr.',
    OVERLAY_PARTS: 'Der mitgelieferte Wert hat jetzt andere Teile.',
    OVERLAY_WORD: 'Dieses Wort kennt das Programm hier nicht.',
    OVERLAY_NUMBER: 'Die Zahl liegt außerhalb ihrer Grenzen.',
    OVERLAY_LOOSER: 'Hier darf ein Laden mehr Vorsicht verlangen als mitgeliefert, nie weniger.',
    OVERLAY_UNSIGNED: 'Es fehlt, wer ihn wann und warum gesetzt hat.',
    DATA_FORM: 'Der Wert hat nicht die Form, die er haben soll.',
    DATA_MISSING: 'Ein nötiger Wert fehlt.',
    DATA_RANGE: 'Eine solche Zahl kann nicht sein.',
    DATA_ORDER: 'Der Wert widerspricht einem anderen dieser Zeile.',
    other: 'Die mitgelieferten Daten lassen ihn nicht mehr zu.',
  } as Readonly<Record<string, string>>,
};
