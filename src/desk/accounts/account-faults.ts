// What can be wrong with an account or a way in, said once. Nothing here tells whether a name exists.
import type { Fault } from '../../shared/fault.ts';
import { longestPassword, shortestPassword } from './password-rule.ts';

const fault = (code: string, field: string, got: string, allowed: string, say: string, fix: string): Fault => ({
  code,
  field,
  got,
  allowed,
  say,
  fix,
});

export const accountFaults = {
  needed: fault(
    'ACCOUNT_NEEDED',
    '',
    'nobody who is signed in',
    'a person who is signed in',
    'Nobody is signed in here.',
    'Sign in; what you typed stays.',
  ),
  locked: fault(
    'ACCOUNT_LOCKED',
    '',
    'a locked sheet',
    'a person who has shown who they are',
    'The sheet is locked.',
    'Unlock it with your PIN or password; what you typed stays.',
  ),
  role: (role: string, needs: string): Fault =>
    fault(
      'ACCOUNT_ROLE',
      '',
      `the role "${role}"`,
      needs,
      'Your role does not allow this.',
      'Ask a manager or the owner.',
    ),
  prove: fault(
    'ACCOUNT_PROVE',
    '',
    'a session opened by PIN',
    'a password or passkey given',
    'This needs your password or passkey, not only the PIN.',
    'Give your password once more.',
  ),
  wrong: fault(
    'ACCOUNT_WRONG',
    '',
    'a name and a secret that do not belong together',
    'the name and password of a person who works here',
    'This name and password do not belong together.',
    'Type both again; a manager or the owner can give you a code for a new password.',
  ),
  wait: (seconds: number): Fault =>
    fault(
      'ACCOUNT_WAIT',
      '',
      `a try ${seconds} s too early`,
      'a try after the wait',
      `Too many wrong tries: wait ${seconds} s.`,
      'Wait; the wait grows with each wrong try.',
    ),
  pinSpent: fault(
    'ACCOUNT_PIN_SPENT',
    'pin',
    'too many wrong PINs',
    'a password or passkey',
    'This PIN no longer opens anything.',
    'Sign in with your password once; then the PIN works again.',
  ),
  code: fault(
    'ACCOUNT_CODE',
    'code',
    'a code that does not work',
    'a code that was not used yet and has not run out',
    'This code does not work, or no longer.',
    'Type it again as it was printed, or ask for a new one.',
  ),
  password: (why: 'short' | 'long' | 'common' | 'personal'): Fault =>
    fault(
      'ACCOUNT_PASSWORD',
      'password',
      why,
      `${shortestPassword} to ${longestPassword} characters, not one that everybody tries first`,
      why === 'short'
        ? 'This password is too short.'
        : why === 'long'
          ? 'This password is too long.'
          : why === 'common'
            ? 'This password is one of those that are tried first.'
            : 'This password is little more than a name that everybody here knows.',
      'A sentence of four or more words of your own is good.',
    ),
  pin: fault(
    'ACCOUNT_PIN',
    'pin',
    'a PIN that cannot be used',
    '4 to 8 digits, not in a row and not all the same',
    'This PIN cannot be used.',
    'Choose 4 to 8 digits that nobody guesses in a few tries.',
  ),
  name: (got: string): Fault =>
    fault(
      'ACCOUNT_NAME',
      'name',
      got,
      'a name of 2 to 60 characters that nobody else here has',
      'This name cannot be used.',
      'Choose another; it is written beside everything the person does.',
    ),
  branch: (got: string): Fault =>
    fault(
      'ACCOUNT_BRANCH',
      'branchId',
      got,
      'a branch of this shop that you may work in',
      'This branch cannot be chosen.',
      'Choose one of the list.',
    ),
  unknown: (got: string): Fault =>
    fault(
      'ACCOUNT_UNKNOWN',
      'id',
      got,
      'one that is here',
      'There is no such person, session or passkey here.',
      'Open the list again.',
    ),
  lastOwner: fault(
    'ACCOUNT_LAST_OWNER',
    'role',
    'a shop without an owner',
    'at least one owner who can sign in',
    'Nobody would be left who may do everything.',
    'Make another person owner first.',
  ),
  whichOwner: (got: string, owners: readonly string[]): Fault =>
    fault(
      'ACCOUNT_WHICH_OWNER',
      'name',
      got === '' ? 'no name' : got,
      owners.length === 0 ? 'nobody: the shop has no owner yet' : owners.join(', '),
      owners.length === 0 ? 'There is no owner who could forget a password.' : 'It is not clear which owner is meant.',
      owners.length === 0
        ? 'Start the program: it prints the code for the first set-up.'
        : 'Name one of them: warmstead owner-code --name "…".',
    ),
  setUp: fault(
    'ACCOUNT_SET_UP',
    '',
    'a second set-up',
    'one set-up, while there is no owner',
    'This shop is set up already.',
    'Sign in.',
  ),
  passkey: fault(
    'ACCOUNT_PASSKEY',
    '',
    'a passkey that did not answer as it should',
    'a passkey of a person who works here',
    'The passkey was not accepted.',
    'Try again, or sign in with your password.',
  ),
  changed: fault(
    'ACCOUNT_CHANGED',
    'id',
    'a change that something else has followed',
    'the last change of that kind',
    'This was changed again meanwhile and cannot be undone as one step.',
    'Look at the list and change it by hand.',
  ),
} as const;
