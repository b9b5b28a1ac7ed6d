// Which names can stand beside what a person does? Letters that can be read and typed; nothing that hides.
import type { Fault } from '../../shared/fault.ts';
import { accountFaults } from './account-faults.ts';

export function nameFault(name: string): Fault | null {
  const text = name.trim();
  const length = [...text].length;
  const readable = /^[\p{L}\p{M}\p{N} .,'’()&/+-]+$/u.test(text) && /\p{L}/u.test(text);
  return length >= 2 && length <= 60 && readable ? null : accountFaults.name(text.slice(0, 60));
}
