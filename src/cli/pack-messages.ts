// The sentences of `warmstead pack` in English and German. What stands in the pack itself has its own words.
import { bookIn, type Language } from '../shared/languages.ts';

const en = {
  pack: 'the pack for the keeper of this home as a PDF of 2 to 6 A4 pages',
  out: 'file to write; it is not written over',
  place: 'whose law asks for which headings, e.g. england, germany, california',
  examples: [
    'warmstead pack box.json --out pack.pdf',
    'warmstead pack box.json --out mappe.pdf --lang de --place germany',
  ],
  exit: '0 written   64 something is wrong with the input   70 failed on our side',
  written: (file: string, pages: number) => `${file}: ${pages} pages`,
  noRecord: 'Made from the file alone: what the register knows of the animal stays open.',
  cannotWrite: { say: 'The file cannot be written.', fix: 'Name a new file in a folder that you may write to.' },
};

const de: typeof en = {
  pack: 'die Mappe für den Halter dieses Heims als PDF mit 2 bis 6 A4-Seiten',
  out: 'Datei, die geschrieben wird; eine vorhandene bleibt, wie sie ist',
  place: 'wessen Recht welche Überschriften verlangt, z. B. england, germany, california',
  examples: en.examples,
  exit: '0 geschrieben   64 etwas stimmt an der Eingabe nicht   70 Fehler bei uns',
  written: (file, pages) => `${file}: ${pages} Seiten`,
  noRecord: 'Nur aus der Datei gemacht: Was das Register vom Tier weiß, bleibt offen.',
  cannotWrite: {
    say: 'Die Datei lässt sich nicht schreiben.',
    fix: 'Eine neue Datei nennen, in einem Ordner, in dem Sie schreiben dürfen.',
  },
};

export const packMessages = (language: Language): typeof en => bookIn('terminal.pack', language, { en, de });
