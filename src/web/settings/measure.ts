// How quantities are written and read back on the screens: the shared measure, under the name the screens know.
export {
  localeOf,
  type Measure,
  measureFor,
  type QuantityKind,
  shownFromStored,
  storedFromShown,
  unitText,
  type Written,
} from '../../shared/measure.ts';
