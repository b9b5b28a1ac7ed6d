// Which languages this program can be read in: those of its books at once, those that a file brought when the shop's
// computer has told of them.
import { useEffect, useState } from 'react';
import { findLanguages, knownLanguages } from '../messages/translate.ts';

export function useLanguageCodes(): readonly string[] {
  const [codes, setCodes] = useState(knownLanguages);
  useEffect(() => {
    let here = true;
    void findLanguages().then((found) => {
      if (here) setCodes(found);
    });
    return () => {
      here = false;
    };
  }, []);
  return codes;
}
