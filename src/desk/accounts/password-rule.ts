// Which passwords and PINs are good enough? Length, and not among those that everybody tries first; no rule of capitals
// and digits (NIST SP 800-63B 5.1.1.2, from memory). Leaves out keeping them (hashing.ts).

export const shortestPassword = 12;
/** Long enough for any sentence; longer ones would only make the computer work (ASVS 4.0.3, 2.1.2). */
export const longestPassword = 128;

/** What people choose when twelve characters are asked for (our own list, from memory): whole, or with digits around. */
const commonWords = [
  'password',
  'passwort',
  'passphrase',
  'geheim',
  'secret',
  'letmein',
  'welcome',
  'willkommen',
  'qwerty',
  'qwertz',
  'qwertyuiop',
  'qwertzuiop',
  'asdfgh',
  'asdfghjkl',
  'iloveyou',
  'ichliebedich',
  'admin',
  'administrator',
  'dragon',
  'monkey',
  'football',
  'baseball',
  'sunshine',
  'princess',
  'changeme',
  'default',
  'master',
  'hallo',
  'hello',
  'abc',
  'abcdef',
  'abcdefgh',
  'snake',
  'schlange',
  'python',
  'reptile',
  'vivarium',
  'terrarium',
  'correcthorsebatterystaple',
  'trustno',
  'superman',
  'batman',
  'starwars',
  'michael',
  'charlie',
  'jordan',
  'shadow',
  'winter',
  'sommer',
  'summer',
];

export type PasswordFinding = 'short' | 'long' | 'common' | 'personal';

/** @param personal  names that anybody here knows: the person's, the shop's, the program's
 *  @returns what is wrong with it, or null */
export function passwordFinding(password: string, personal: readonly string[]): PasswordFinding | null {
  const characters = [...password.normalize('NFC')].length;
  if (characters < shortestPassword) return 'short';
  if (characters > longestPassword) return 'long';
  const plain = password.normalize('NFKC').toLowerCase();
  if (isRun(plain) || commonWords.some((word) => isMostly(plain, word))) return 'common';
  const names = personal.map((name) => name.toLowerCase().replace(/\s+/g, '')).filter((name) => name.length >= 4);
  return names.some((name) => isMostly(plain.replace(/\s+/g, ''), name)) ? 'personal' : null;
}

/** The word, perhaps twice, with digits and signs around it: nothing else that would have to be guessed. */
function isMostly(plain: string, word: string): boolean {
  return [plain, plain.replaceAll('0', 'o')].some((text) => {
    const rest = text.replaceAll(word, '').replace(/[^\p{L}]/gu, '');
    return text.includes(word) && rest.replaceAll('o', '').length <= 1;
  });
}

/** "aaaaaaaaaaaa", "121212121212", "123456789012", "abcdefghijkl": few steps, always the same. */
function isRun(plain: string): boolean {
  const codes = [...plain].map((letter) => letter.codePointAt(0) ?? 0);
  const steps = new Set(codes.slice(1).map((code, i) => code - (codes[i] ?? 0)));
  return steps.size <= 2 || new Set(codes).size <= 3;
}

/** 4 to 8 digits, no row up or down, not one digit throughout. */
export function isGoodPin(pin: string): boolean {
  if (!/^\d{4,8}$/.test(pin)) return false;
  const steps = new Set([...pin].slice(1).map((digit, i) => (Number(digit) - Number(pin[i]) + 10) % 10));
  return steps.size > 1;
}
