// What the fields and choices of the register are called, in each language.
import type { Spoken } from '../care-facts.ts';
import type { RegisterField } from '../register.ts';

export const fieldWords: Readonly<Record<RegisterField, Spoken>> = {
  speciesId: { en: 'Species', de: 'Art' },
  callName: { en: 'Name or number', de: 'Name oder Nummer' },
  sex: { en: 'Sex', de: 'Geschlecht' },
  hatched: { en: 'Hatched or born', de: 'Geschlüpft oder geboren' },
  supplierName: { en: 'Supplier, full name', de: 'Lieferant, voller Name' },
  supplierContact: { en: 'Supplier, how to reach', de: 'Lieferant, erreichbar unter' },
  originCountry: { en: 'Country of origin', de: 'Herkunftsland' },
  acquiredOn: { en: 'Came on', de: 'Zugang am' },
  acquiredHow: { en: 'Came how', de: 'Art des Zugangs' },
  bred: { en: 'Bred or wild', de: 'Zucht oder Wildfang' },
  chipNumber: { en: 'Microchip', de: 'Chip' },
  otherMark: { en: 'Other mark', de: 'Anderes Kennzeichen' },
  paperKind: { en: 'Trade paper, kind', de: 'Handelspapier, Art' },
  paperNumber: { en: 'Trade paper, number', de: 'Handelspapier, Nummer' },
  colourForm: { en: 'Colour form', de: 'Farbform' },
};

export const choiceWords: Readonly<Record<string, Spoken>> = {
  male: { en: 'male', de: 'männlich' },
  female: { en: 'female', de: 'weiblich' },
  unknown: { en: 'asked, not known', de: 'gefragt, nicht bekannt' },
  bought: { en: 'bought', de: 'gekauft' },
  'bred-here': { en: 'bred here', de: 'hier gezüchtet' },
  rescued: { en: 'taken in from need', de: 'aus Not aufgenommen' },
  returned: { en: 'returned', de: 'zurückgegeben' },
  loan: { en: 'on loan', de: 'geliehen' },
  bred: { en: 'captive bred', de: 'Nachzucht' },
  ranched: { en: 'farmed', de: 'Farmzucht' },
  wild: { en: 'taken from the wild', de: 'Wildfang' },
};
