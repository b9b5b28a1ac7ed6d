// The sentences of the commands that keep the records: check, backup, restore, move; English and German.
import type { BreakKind } from '../records/verify-chain.ts';
import { bookIn, type Language, said } from '../shared/languages.ts';

const en = {
  help: {
    verify: 'are the records still what was written? Names the first row or link that is not',
    head: 'an end of a chain that was written down earlier, as BRANCH:NUMBER:HASH; may be given again',
    backup: 'all records of one moment into one file, while everybody goes on working',
    restore: 'puts a backup into an empty database, counted and hashed again, and brings it up to date',
    move: 'moves the built-in records to the empty server named by DATABASE_URL; the old ones stay as they are',
    file: 'the backup file',
    json: 'write JSON for other programs',
    places: 'Records: the server named by DATABASE_URL, else the built-in ones in WARMSTEAD_DATA (usually data-local).',
    examplesVerify: ['warmstead verify-records', 'warmstead verify-records --head "$(cat head.txt)" --json'],
    examplesBackup: ['warmstead backup shop.sql.gz'],
    examplesRestore: [
      'WARMSTEAD_DATA=new-records warmstead restore shop.sql.gz',
      'DATABASE_URL=postgresql://localhost/shop warmstead restore shop.sql.gz',
    ],
    examplesMove: ['WARMSTEAD_DATA=data-local DATABASE_URL=postgresql://localhost/shop warmstead move-records'],
    ownerCode: 'a code with which an owner who forgot the password chooses a new one; for whoever sits at this machine',
    ownerName: 'which owner, where there are several',
    examplesOwner: ['warmstead owner-code', 'warmstead owner-code --name "Name of the owner"'],
    load: 'readings of live sources from files (source,time,value), in bulk: all, or none when a row is wrong',
    loadFiles: 'CSV files, also packed (.gz); - reads standard input',
    leaveOut: 'leave wrong rows out and keep the others',
    examplesLoad: [
      'warmstead load-readings 2025-*.csv.gz',
      'gunzip -c 2025-01.csv.gz | warmstead load-readings - --leave-out --json',
    ],
    exitLoad: '0 loaded   1 loaded, wrong rows were left out   64 refused, nothing was kept   70 failed on our side',
    exitOwner: '0 the code was printed   64 refused   70 failed on our side',
    exitVerify: '0 nothing was tampered with   1 something was   64 there are no records here   70 failed on our side',
    exitOther:
      '0 done   1 done, but the chain of the records is broken   64 refused   70 failed on our side   130 stopped',
  },
  sound: (links: number, rows: number) =>
    `+ SOUND  ${links} links, ${rows} rows: every one is what was written, in the order in which it was written.`,
  broken: said<[count: number]>('x BROKEN  in {0, plural, one {# place} other {# places}}; the first one:'),
  others: 'Further places:',
  place: (table: string, row: string, number: number | null) =>
    `${table}${row === '' ? '' : ` ${row}`}${number === null ? '' : ` (link ${number})`}`,
  written: (at: string, by: string) => `written ${at} by ${by}`,
  kinds: {
    'row-changed': 'This row is not what was written.',
    'row-deleted': 'This row is gone.',
    'row-without-link': 'This row was put in behind the back of the program.',
    'row-linked-twice': 'This row stands in the chain twice.',
    'link-changed': 'This link of the chain was altered or stands in another place.',
    'link-missing': 'A link of the chain is missing here.',
    'cut-off': 'The end that was written down is no longer there: something was cut off.',
    'not-this-chain': 'The end that was written down was another: the chain was made anew.',
    'file-changed': 'The bytes of this file are not those that came in.',
    'guard-off': 'This table no longer refuses changes, or no longer adds to the chain.',
    'version-differs': 'This enquiry is not its newest version.',
  } satisfies Record<BreakKind, string>,
  branch: 'branch',
  erased: (count: number) => `Personal data were taken out of ${count} rows, as the chain itself says:`,
  heads: 'Ends of the chains. Write them down elsewhere: only they show later that nothing was cut off.',
  savedSoFar: (done: number, of: number) => `Saving: ${done} of ${of} tables. Ctrl-C stops it.`,
  savingStopped: 'Stopped. No file was written.',
  saved: (rows: number, tables: number, file: string) => `Saved ${rows} rows of ${tables} tables to ${file}.`,
  back: (rows: number, tables: number) =>
    `Put back ${rows} rows of ${tables} tables; every count and hash is the same.`,
  raised: (steps: number) => `Brought up to date by ${steps} steps.`,
  moved: (rows: number, tables: number) =>
    `Moved ${rows} rows of ${tables} tables; every count and hash is the same on both sides.`,
  ownerCode: (name: string, code: string) => [
    `Code for ${name}: ${code}`,
    'On the sign-in sheet choose “I have a code”. It works once, for a day; the old password works until then.',
    'Codes given before no longer work. That this one was given stands in the list of changes to accounts.',
  ],
  loaded: (rows: number, written: number, known: number, perSecond: number) =>
    `${rows} readings, ${written} new, ${known} were there already (${perSecond} a second).`,
  leftOut: (count: number) => `${count} wrong rows were left out; the first:`,
  afterMove: 'The old records were left as they are. Start the program with this DATABASE_URL from now on.',
  table: (name: string, rows: number, hash: string) => `${name.padEnd(26)} ${String(rows).padStart(10)}  ${hash}`,
  needsBoth: {
    say: 'Moving needs both places.',
    fix: 'Set DATABASE_URL to the new, empty server; WARMSTEAD_DATA names the folder of the old records.',
  },
  disk: {
    say: 'The file cannot be written or read.',
    fix: 'Look whether the folder is there, whether you may write in it, and whether its disk is full.',
  },
};

type Words = typeof en;

const de: Words = {
  help: {
    verify: 'sind die Aufzeichnungen noch, was geschrieben wurde? Nennt die erste Zeile, die es nicht ist',
    head: 'ein früher notiertes Ende einer Kette, als FILIALE:NUMMER:PRÜFSUMME; auch mehrmals',
    backup: 'alle Aufzeichnungen eines Augenblicks in eine Datei, während alle weiterarbeiten',
    restore: 'spielt eine Sicherung in eine leere Datenbank, zählt und prüft alles neu und bringt sie auf den Stand',
    move: 'zieht die eingebauten Aufzeichnungen auf den leeren Server von DATABASE_URL um; die alten bleiben',
    file: 'die Sicherungsdatei',
    json: 'JSON für andere Programme ausgeben',
    places: 'Aufzeichnungen: der Server von DATABASE_URL, sonst die eingebauten in WARMSTEAD_DATA (meist data-local).',
    examplesVerify: en.help.examplesVerify,
    examplesBackup: en.help.examplesBackup,
    examplesRestore: en.help.examplesRestore,
    examplesMove: en.help.examplesMove,
    ownerCode: 'ein Code, mit dem ein Inhaber ein vergessenes Passwort ersetzt; für den, der an diesem Rechner sitzt',
    ownerName: 'welcher Inhaber, wenn es mehrere gibt',
    examplesOwner: en.help.examplesOwner,
    load: 'Messwerte von Quellen aus Dateien (source,time,value), in Mengen: alle, oder keiner, wenn eine Zeile falsch ist',
    loadFiles: 'CSV-Dateien, auch gepackt (.gz); - liest die Standardeingabe',
    leaveOut: 'falsche Zeilen weglassen, die anderen behalten',
    examplesLoad: en.help.examplesLoad,
    exitLoad: '0 geladen   1 geladen, falsche Zeilen weggelassen   64 abgelehnt, nichts behalten   70 Fehler bei uns',
    exitOwner: '0 der Code wurde ausgegeben   64 abgelehnt   70 Fehler bei uns',
    exitVerify:
      '0 nichts wurde verändert   1 etwas wurde verändert   64 hier sind keine Aufzeichnungen   70 Fehler bei uns',
    exitOther: '0 getan   1 getan, doch die Kette ist gebrochen   64 abgelehnt   70 Fehler bei uns   130 angehalten',
  },
  sound: (links, rows) =>
    `+ UNVERSEHRT  ${links} Glieder, ${rows} Zeilen: jede ist, was geschrieben wurde, und in derselben Reihenfolge.`,
  broken: said('x GEBROCHEN  an {0, plural, one {# Stelle} other {# Stellen}}; die erste:', 'de'),
  others: 'Weitere Stellen:',
  place: (table, row, number) => `${table}${row === '' ? '' : ` ${row}`}${number === null ? '' : ` (Glied ${number})`}`,
  written: (at, by) => `geschrieben ${at} von ${by}`,
  kinds: {
    'row-changed': 'Diese Zeile ist nicht, was geschrieben wurde.',
    'row-deleted': 'Diese Zeile fehlt.',
    'row-without-link': 'Diese Zeile wurde am Programm vorbei eingefügt.',
    'row-linked-twice': 'Diese Zeile steht zweimal in der Kette.',
    'link-changed': 'Dieses Glied der Kette wurde verändert oder steht an anderer Stelle.',
    'link-missing': 'Hier fehlt ein Glied der Kette.',
    'cut-off': 'Das notierte Ende ist nicht mehr da: etwas wurde abgeschnitten.',
    'not-this-chain': 'Das notierte Ende war ein anderes: die Kette wurde neu gemacht.',
    'file-changed': 'Die Bytes dieser Datei sind nicht die, die kamen.',
    'guard-off': 'Diese Tabelle verweigert Änderungen nicht mehr oder führt die Kette nicht mehr fort.',
    'version-differs': 'Diese Anfrage ist nicht ihre neueste Fassung.',
  },
  branch: 'Filiale',
  erased: (count) => `Aus ${count} Zeilen wurden persönliche Angaben entfernt, wie die Kette selbst sagt:`,
  heads: 'Enden der Ketten. Anderswo notieren: nur sie zeigen später, dass nichts abgeschnitten wurde.',
  savedSoFar: (done, of) => `Sicherung: ${done} von ${of} Tabellen. Strg-C hält sie an.`,
  savingStopped: 'Angehalten. Es wurde keine Datei geschrieben.',
  saved: (rows, tables, file) => `${rows} Zeilen aus ${tables} Tabellen gesichert in ${file}.`,
  back: (rows, tables) => `${rows} Zeilen in ${tables} Tabellen zurückgespielt; jede Zahl und Prüfsumme ist gleich.`,
  raised: (steps) => `Mit ${steps} Schritten auf den Stand gebracht.`,
  moved: (rows, tables) =>
    `${rows} Zeilen aus ${tables} Tabellen umgezogen; jede Zahl und Prüfsumme ist auf beiden Seiten gleich.`,
  ownerCode: (name, code) => [
    `Code für ${name}: ${code}`,
    'Auf dem Anmeldeblatt „Ich habe einen Code“ wählen. Er gilt einmal, einen Tag lang; bis dahin gilt das alte Passwort.',
    'Früher vergebene Codes gelten nicht mehr. Dass dieser vergeben wurde, steht in der Liste der Änderungen an Konten.',
  ],
  loaded: (rows, written, known, perSecond) =>
    `${rows} Messwerte, ${written} neu, ${known} waren schon da (${perSecond} je Sekunde).`,
  leftOut: (count) => `${count} falsche Zeilen wurden weggelassen; die ersten:`,
  afterMove: 'Die alten Aufzeichnungen blieben, wie sie sind. Das Programm ab jetzt mit dieser DATABASE_URL starten.',
  table: en.table,
  needsBoth: {
    say: 'Zum Umziehen braucht es beide Orte.',
    fix: 'DATABASE_URL auf den neuen, leeren Server setzen; WARMSTEAD_DATA nennt den Ordner der alten Aufzeichnungen.',
  },
  disk: {
    say: 'Die Datei kann nicht geschrieben oder gelesen werden.',
    fix: 'Nachsehen, ob es den Ordner gibt, ob man darin schreiben darf und ob sein Datenträger voll ist.',
  },
};

export const recordsMessages = (language: Language): Words => bookIn<Words>('terminal.records', language, { en, de });
