// Every sentence of the terminal program in English. The shape of this object is what a language must give.
// Leaves out: faults and verdicts, which come from the pure rooms with their own words.
import type { PlaceId } from '../../physics/answer.ts';
import { said } from '../../shared/languages.ts';

export type Season = 'winter' | 'summer';

const places: Readonly<Record<PlaceId, string>> = {
  'basking-surface': 'basking surface',
  'basking-spot': 'basking spot, hottest',
  'warm-air': 'warm-end air',
  'warm-hide': 'warm hide',
  'cool-hide': 'cool hide',
  'cool-air': 'cool-end air',
  'cool-floor': 'cool-end floor',
  perch: 'perch',
  probe: 'probe',
  'front-glass': 'front glass',
  'hottest-reachable': 'hottest within reach',
  'heater-surface': 'heater surface',
};

export const en = {
  places,
  verdicts: { holds: 'HOLDS', fails: 'FAILS', 'not-known': 'NOT KNOWN' },
  season: said<[season: Season]>('{0, select, winter {coldest day} other {hottest day}}'),

  help: {
    usage: 'Usage:',
    arguments: 'Arguments:',
    options: 'Options:',
    commands: 'Commands:',
    examples: 'Examples:',
    exit: 'Exit codes:',
    about: 'Will this heated home work in that room, in winter and in summer? Answers from a file, without a database.',
    file: 'enclosure file (JSON, docs/formats.md); "-" reads standard input',
    plan: 'verdict on every need of the animal, temperatures, dial, watts and a gradient map',
    simulate: 'temperatures and watts without any verdict, settled or over a day',
    check: 'is the file sound? Names every fault at once',
    json: 'write JSON for other programs',
    csv: 'write CSV for a spreadsheet',
    members: 'how many possible boxes to compute',
    seed: 'seed of their random draw: the same seed gives the same answer',
    species: 'judge for this species instead of the one in the file',
    standard:
      'space standard to judge by, an id of data/standards.json, or none; the home minimum (home-third) unless named',
    stage: 'hatchling, young or adult',
    shopValues: 'the shop’s own values, a file exported from the desk (docs/formats.md)',
    brief: 'leave out the needs that hold',
    map: 'which gradient maps to draw: winter, summer, both or none; both unless given',
    steady: 'settled state in a room that does not change',
    night: 'with the night set points and no day heaters',
    room: 'room temperature, needed with --steady',
    rh: 'relative humidity of the room; that of the file unless given',
    sun: 'sun on the outside of the front; with --day that of the file unless given, else none',
    day: 'one day of the file: winter or summer; winter unless given',
    low: 'lowest room temperature of a day of your own, together with --high',
    high: 'highest room temperature of a day of your own, together with --low',
    watts: 'fixed watts, one number a heater, comma between; no thermostat',
    units: 'units to show and to read: metric (°C, cm, g) or us (°F, inches); metric unless given',
    lang: 'language: en, de or one of data/languages; that of the environment unless given',
    unlessGiven: (value: string): string => `${value} unless given`,
    helpOption: 'show this help',
    version: 'show the version',
    examplesPlan: [
      'warmstead plan data/examples/wood-1200.json --standard home-third',
      'warmstead plan box.json --species royal --stage adult --units us',
      'warmstead plan box.json --json --members 200 --seed 7 > answer.json',
      'cat box.json | warmstead plan - --map none',
    ],
    examplesSimulate: [
      'warmstead simulate data/examples/wood-1200.json --steady --room 17 --rh 45 --json',
      'warmstead simulate box.json --steady --room 20 --watts 100 --csv',
      'warmstead simulate box.json --day winter --csv > day.csv',
      'warmstead simulate box.json --low 16 --high 24 --json',
    ],
    examplesCheck: ['warmstead check box.json', 'warmstead check - --json < box.json'],
    exitPlan:
      '0 every need holds   1 a need fails   2 not known   64 something is wrong with the input   70 failed on our side',
    exitOther: '0 done   64 something is wrong with the input   70 failed on our side',
    more: 'warmstead COMMAND --help shows the options and examples of one command.',
  },

  check: {
    sound: (file: string): string => `${file} is a sound enclosure file.`,
    faults: said<[count: number, file: string]>('{0, plural, one {# thing} other {# things}} to mend in {1}:'),
    standardInput: 'standard input',
    commandLine: 'the command line',
    allowed: 'allowed',
    given: 'given',
    range: (low: string, high: string): string => `${low} to ${high}`,
    whole: (range: string): string => `a whole number, ${range}`,
    file: 'a file',
    fileThere: 'a file that exists',
    fileReadable: 'a file that may be read',
    fileNew: 'a file that does not exist yet',
    fileWithRoom: 'a file in a folder with room',
    keyOnce: 'each key once',
    atMost: (size: string): string => `at most ${size}`,
    price: 'a price',
  },

  own: {
    title: 'Shop values in this answer',
    sign: 'shop’s own value',
    said: (by: string, on: string, why: string): string => `by ${by}, ${on}: ${why}`,
    shipped: (value: string): string => `(shipped: ${value})`,
    refused: 'not used, because the facts no longer allow it.',
    range: (low: string, high: string): string => `${low} to ${high}`,
  },

  plan: {
    needs: 'Needs',
    wanted: 'wanted',
    settle: 'what would settle it',
    temperatures: 'Temperatures, median and 90 % interval',
    place: 'place',
    winterNight: (room: string): string => `winter night, room ${room}`,
    winterDay: (room: string): string => `winter day, room ${room}`,
    midDay: (room: string): string => `mid-season day, room ${room}`,
    summerDay: (room: string): string => `summer day, room ${room}`,
    dial: 'Dial',
    dialSet: (name: string, day: string, night: string): string => `${name}: set to ${day} by day, ${night} by night`,
    dialAdvised: (value: string): string => `advised by day: ${value}`,
    dialNone: 'no setting of this dial reaches the wanted basking surface',
    dialExpect: (basking: string, probe: string): string =>
      `expect ${basking} at the basking surface, ${probe} at the probe`,
    power: 'Power',
    powerSeason: (season: string, watts: string, duty: string, kWh: string): string =>
      `${season}: ${watts} on average, ${duty} of the installed power, ${kWh} a day`,
    powerYear: (kWh: string): string => `a year: ${kWh}`,
    map: (season: string, low: string, high: string): string =>
      `Gradient map of the floor, ${season}, room ${low} to ${high}`,
    notes: 'Notes of the model',
    othersHold: said<[count: number]>('{0, plural, one {# other need holds.} other {# other needs hold.}}'),
    memory: '* from memory, common practice or our choice; no page was read for it.',
    headlineHolds: 'Every need is met in winter, in summer and between.',
    headline: said<[first: string, more: number]>('{0}{1, plural, =0 {} other { and # more}}.'),
    basis: (members: number, seed: number): string =>
      `A model's answer over ${members} possible boxes (seed ${seed}), not a measurement. Prove the home empty with readings before the animal moves in.`,
  },

  map: {
    warmEnd: 'warm end',
    coolEnd: 'cool end',
    hour: 'hour',
    heater: 'heater',
    room: 'room',
    legend: {
      cold2: '3 K or more too cold',
      cold1: 'too cold',
      wanted: 'wanted',
      basking: 'wanted, basking range',
      warm1: 'too warm',
      warm2: '3 K or more too warm',
    },
    fine: 'The floor is as wanted everywhere, all day.',
    mostly: 'No end is too cold or too warm for long; single cells are.',
    trouble: said<[kind: 'cold' | 'warm', part: 'warm' | 'middle' | 'cool', span: string]>(
      'Too {0, select, cold {cold} other {warm}} {1, select, middle {in the middle} warm {at the warm end} other {at the cool end}} {2}.',
    ),
    allDay: 'all day',
    fromTo: (from: string, to: string): string => `from ${from} to ${to}`,
    ownScale: (low: string, high: string): string => `Scale: ${low} to ${high}`,
  },

  simulate: {
    steady: (room: string, rh: string): string => `Settled state, room ${room}, ${rh} relative humidity`,
    day: (low: string, high: string): string => `One day, room ${low} to ${high}`,
    heaters: 'heaters',
    air: 'relative humidity, warm and cool end',
    dew: 'dew on the front glass',
    airChange: 'air changes an hour',
    balance: 'heat balance left over',
    lowest: 'lowest',
    highest: 'highest',
    yes: 'yes',
    no: 'no',
    energy: 'energy',
  },

  faults: {
    noFile: (name: string) => ({ say: `There is no file ${name}.`, fix: 'Check the path and the spelling.' }),
    notReadable: (name: string) => ({ say: `${name} cannot be read.`, fix: 'Check its permissions.' }),
    isFolder: (name: string) => ({ say: `${name} is a folder, not a file.`, fix: 'Name one JSON file in it.' }),
    empty: (name: string) => ({ say: `${name} is empty.`, fix: 'Start from a file of data/examples/.' }),
    tooLarge: (name: string) => ({
      say: `${name} is too large for an enclosure.`,
      fix: 'Check that it is the right file.',
    }),
    notText: (name: string) => ({ say: `${name} is not text in UTF-8.`, fix: 'Save it as UTF-8 JSON.' }),
    notJsonEnd: (line: number, column: number) => ({
      say: `It stops being JSON at its end, line ${line}, column ${column}: something is not closed.`,
      fix: 'Close every quote and bracket.',
    }),
    notJson: (line: number, column: number, found: string) => ({
      say: `It stops being JSON at line ${line}, column ${column}, at ${found}.`,
      fix: 'Look for a missing or extra comma, quote or bracket just before this place.',
    }),
    twice: (line: number, column: number, key: string) => ({
      say: `The key ${key} stands twice in one object, again at line ${line}, column ${column}.`,
      fix: 'Keep one of them.',
    }),
    number: (option: string) => ({
      say: `${option} needs a number within its limits.`,
      fix: 'Use a point for decimals.',
    }),
    choice: (option: string) => ({ say: `${option} does not know this word.`, fix: 'Use one of the words allowed.' }),
    noAnimal: {
      say: 'The file names no animal to plan for.',
      fix: 'Add --species ID and --stage STAGE, or fill "animal".',
    },
    species: { say: 'This species is not in data/species/.', fix: 'Use one of the ids listed.' },
    noLength: (species: string) => ({
      say: `The usual length of ${species} at this stage is not known.`,
      fix: 'Fill "animal" with its length in the file.',
    }),
    together: (a: string, b: string) => ({ say: `${a} and ${b} do not go together.`, fix: 'Keep one of them.' }),
    needs: (a: string, b: string) => ({ say: `${a} needs ${b} as well.`, fix: `Add ${b}.` }),
    order: { say: 'The lowest room temperature is above the highest.', fix: 'Swap --low and --high.' },
    wattsCount: (heaters: number) => ({
      say: `The file has ${heaters} heaters; --watts must give one number for each.`,
      fix: 'Write them in the order of the file with commas between.',
    }),
    usage: (detail: string) => ({ say: detail, fix: 'warmstead --help shows what there is.' }),
    data: { say: 'A file of facts below data/ is damaged.', fix: 'Run npm run data, or install the program again.' },
    crash: (reference: string): string => `Something failed on our side (${reference}). The input was not judged.`,
  },
};

export type Messages = typeof en;
