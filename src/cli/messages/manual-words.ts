// The sentences of the manual page and of completion, in English and German.
import { bookIn, type Language } from '../../shared/languages.ts';
import type { ManualWords } from '../manual.ts';

interface ShellWords extends ManualWords {
  readonly completionHelp: string;
  readonly shellArgument: string;
  readonly manualHelp: string;
  readonly completionExamples: readonly string[];
  readonly manualExamples: readonly string[];
  readonly shellExit: string;
}

const en: ShellWords = {
  completionHelp: 'a script with which a shell finishes half-typed commands',
  shellArgument: 'bash, zsh or fish',
  manualHelp: 'the manual page, for man or a printer',
  completionExamples: ['source <(warmstead completion bash)', 'warmstead completion fish | source'],
  manualExamples: ['warmstead manual | man -l -', 'warmstead manual > warmstead.1'],
  shellExit: '0 done   64 something is wrong with the input   70 failed on our side',
  about: 'will this heated home work for this snake, in that room, in winter and in summer?',
  name: 'Name',
  synopsis: 'Synopsis',
  description: 'Description',
  commands: 'Commands',
  exit: 'Exit codes',
  environment: 'Environment',
  files: 'Files',
  examples: 'Examples',
  cautions: 'Cautions',
  seeAlso: 'See also',
  long: [
    'Warmstead computes the heat and the moisture of a heated enclosure from a description of its box, heaters, thermostats, furnishing and room, and holds the result against what the animal needs. A verdict is "holds", "fails" or "not known", always with its reasons.',
    'Its answers are those of a model over many possible versions of the box: median and the interval that holds nine in ten of them. They are no measurement. Before an animal moves in, the home is run empty and proven by readings.',
    'Every command works from files, without a database and without a network; those that keep or move the records of a shop say so.',
  ],
  exitRows: [
    [
      '0',
      'done; with plan: every need holds (with --search: of the first kit); with proof: proven; plan --faults and plan --stages always',
    ],
    [
      '1',
      'with plan: a need fails; with proof: failed; with verify-records, restore and move-records: the chain of the records is broken; with load-readings: wrong rows were left out',
    ],
    ['2', 'with plan: a need is not known; with proof: not proven'],
    ['64', 'something is wrong with what was handed in; every fault is named at once'],
    ['70', 'something failed on our side'],
    ['130', 'stopped by Ctrl-C; backup leaves no half file'],
  ],
  environmentRows: [
    ['NO_COLOR', 'no colour when set to anything but nothing'],
    ['FORCE_COLOR', 'colour even when standard output is no terminal; 0 for none'],
    ['LC_ALL, LC_MESSAGES, LANG', 'language, when --lang is not given'],
    ['COLUMNS', 'width in columns when standard output is no terminal; 80 unless given, 48 to 160'],
    ['TERM', 'no colour when it is dumb'],
    ['DATABASE_URL', 'PostgreSQL server of the records; the built-in one unless given'],
    ['WARMSTEAD_DATA', 'folder of the built-in records, seen from the folder of the program; data-local unless given'],
    ['WARMSTEAD_DEBUG', 'shows where in the program a failure on our side came from'],
  ],
  fileRows: [
    ['data/examples/*.json', 'ready enclosure files to start from'],
    ['docs/enclosure.schema.json', 'the form of an enclosure file, for editors'],
    ['docs/formats.md', 'all file formats in words'],
    ['data/languages/*.json', 'further languages, one file each; those of a shop lie in languages/ of its records'],
  ],
  exampleRows: [
    ['cp data/examples/wood-1200.json box.json', 'An enclosure file to change, named box.json in the lines below.'],
    ['warmstead plan data/examples/wood-1200.json', 'Does this wooden vivarium work in its room?'],
    ['warmstead plan box.json --faults --units us', 'What happens when something fails, in degrees Fahrenheit?'],
    ['warmstead proof log.csv --enclosure box.json', 'What do the readings of a logger prove?'],
    ['cat box.json | warmstead check - --json', 'Every fault of a file, for another program.'],
  ],
  cautionText: [
    'Heat in an enclosure is mains electricity close to water and to what burns. Follow the local wiring rules; have an electrician do what they reserve for one. Every heater runs on a thermostat of a kind that may drive it.',
    'Nothing here is a diagnosis. An animal that looks ill goes to a vet.',
  ],
  seeAlsoText:
    'warmstead COMMAND --help for the options and examples of one command; docs/running.md for the program of the shop, docs/readings.md for logger files, docs/errors.md for every refusal; man(1), psql(1).',
};

const de: ShellWords = {
  completionHelp: 'ein Skript, mit dem eine Shell angefangene Befehle ergänzt',
  shellArgument: 'bash, zsh oder fish',
  manualHelp: 'die Handbuchseite, für man oder den Drucker',
  completionExamples: en.completionExamples,
  manualExamples: en.manualExamples,
  shellExit: '0 fertig   64 an der Eingabe stimmt etwas nicht   70 Fehler bei uns',
  about: 'bewährt sich dieses beheizte Heim für diese Schlange, in jenem Raum, im Winter und im Sommer?',
  name: 'Name',
  synopsis: 'Übersicht',
  description: 'Beschreibung',
  commands: 'Befehle',
  exit: 'Rückgabewerte',
  environment: 'Umgebung',
  files: 'Dateien',
  examples: 'Beispiele',
  cautions: 'Vorsicht',
  seeAlso: 'Siehe auch',
  long: [
    'Warmstead berechnet Wärme und Feuchte eines beheizten Terrariums aus der Beschreibung von Wänden, Heizungen, Thermostaten, Einrichtung und Raum und hält das Ergebnis gegen das, was das Tier braucht. Ein Urteil lautet „hält“, „hält nicht“ oder „nicht bekannt“, immer mit seinen Gründen.',
    'Die Antworten sind die eines Modells über viele mögliche Fassungen des Terrariums: Median und die Spanne, in der neun von zehn liegen. Sie sind keine Messung. Bevor ein Tier einzieht, läuft das Heim leer und wird durch Messwerte nachgewiesen.',
    'Jeder Befehl arbeitet mit Dateien, ohne Datenbank und ohne Netz; die, welche die Aufzeichnungen eines Ladens sichern oder umziehen, sagen es.',
  ],
  exitRows: [
    [
      '0',
      'fertig; bei plan: jeder Bedarf hält (mit --search: bei der ersten Ausstattung); bei proof: nachgewiesen; plan --faults und plan --stages immer',
    ],
    [
      '1',
      'bei plan: etwas hält nicht; bei proof: gescheitert; bei verify-records, restore und move-records: die Kette der Aufzeichnungen ist gebrochen; bei load-readings: falsche Zeilen wurden weggelassen',
    ],
    ['2', 'bei plan: etwas ist nicht bekannt; bei proof: nicht nachgewiesen'],
    ['64', 'mit der Eingabe stimmt etwas nicht; alle Fehler werden auf einmal genannt'],
    ['70', 'bei uns ist etwas fehlgeschlagen'],
    ['130', 'mit Ctrl-C angehalten; backup lässt keine halbe Datei zurück'],
  ],
  environmentRows: [
    ['NO_COLOR', 'keine Farbe, wenn gesetzt und nicht leer'],
    ['FORCE_COLOR', 'Farbe auch dann, wenn die Ausgabe kein Terminal ist; 0 für keine'],
    ['LC_ALL, LC_MESSAGES, LANG', 'Sprache, wenn --lang fehlt'],
    ['COLUMNS', 'Breite in Spalten, wenn die Ausgabe kein Terminal ist; ohne Angabe 80, von 48 bis 160'],
    ['TERM', 'keine Farbe bei dumb'],
    ['DATABASE_URL', 'PostgreSQL-Server der Aufzeichnungen; ohne Angabe der eingebaute'],
    ['WARMSTEAD_DATA', 'Ordner der eingebauten Aufzeichnungen, vom Ordner des Programms aus; ohne Angabe data-local'],
    ['WARMSTEAD_DEBUG', 'zeigt, woher im Programm ein Fehlschlag auf unserer Seite kam'],
  ],
  fileRows: [
    ['data/examples/*.json', 'fertige Terrariendateien zum Anfangen'],
    ['docs/enclosure.schema.json', 'die Form einer Terrariendatei, für Editoren'],
    ['docs/formats.md', 'alle Dateiformate in Worten'],
    [
      'data/languages/*.json',
      'weitere Sprachen, je eine Datei; die eines Ladens liegen in languages/ seiner Aufzeichnungen',
    ],
  ],
  exampleRows: [
    ['cp data/examples/wood-1200.json box.json', 'Eine Terrariendatei zum Ändern, in den Zeilen darunter box.json.'],
    ['warmstead plan data/examples/wood-1200.json', 'Bewährt sich dieses Holzterrarium in seinem Raum?'],
    ['warmstead plan box.json --faults --lang de', 'Was geschieht, wenn etwas ausfällt?'],
    ['warmstead proof log.csv --enclosure box.json', 'Was weisen die Messwerte eines Loggers nach?'],
    ['cat box.json | warmstead check - --json', 'Alle Fehler einer Datei, für ein anderes Programm.'],
  ],
  cautionText: [
    'Wärme im Terrarium ist Netzstrom neben Wasser und neben dem, was brennt. Es gelten die örtlichen Vorschriften; was sie der Elektrofachkraft vorbehalten, macht die Elektrofachkraft. Jede Heizung läuft an einem Thermostat, der für sie geeignet ist.',
    'Nichts hiervon ist eine Diagnose. Ein Tier, das krank aussieht, gehört zum Tierarzt.',
  ],
  seeAlsoText:
    'warmstead BEFEHL --help für Optionen und Beispiele eines Befehls; docs/running.md für das Programm des Ladens, docs/readings.md für Loggerdateien, docs/errors.md für jede Ablehnung; man(1), psql(1).',
};

export const shellWords = (language: Language): ShellWords =>
  bookIn<ShellWords>('terminal.manual', language, { en, de });
