// A page worked by its keyboard alone, as somebody does who has no mouse: Tab until the named control has the focus, then keys.
import type { Page } from 'playwright-core';

export interface Keyboard {
  /** Tab until a control of this name has the focus. @param within  a selector that it must stand in */
  readonly to: (name: RegExp, within?: string) => Promise<void>;
  /** Keys, one after the other: "Enter", "ArrowDown" … */
  readonly press: (...keys: readonly string[]) => Promise<void>;
  readonly type: (text: string) => Promise<void>;
  /** Goes there, replaces what stands there, and leaves it. */
  readonly fill: (name: RegExp, text: string, within?: string) => Promise<void>;
  /** Goes to a list that unfolds, waits for what is wanted to be in it, and types how it begins. */
  readonly choose: (name: RegExp, text: string, within?: string) => Promise<void>;
  /** Goes there and presses Enter. */
  readonly enter: (name: RegExp, within?: string) => Promise<void>;
  /** Loads the page again in the middle of what is written, as a flat battery or a careless hand does. */
  readonly reload: () => Promise<void>;
}

/** More stops than any sheet has. */
const mostStops = 500;
/** As long as somebody waits for a sheet before they give up on it (our choice) [ms]. */
const patienceMs = 60_000;

/** Waits as a person does, who presses no key before what they look for stands on the sheet and can be used. */
const usable = (page: Page, name: RegExp, within: string) =>
  page.waitForFunction(
    ({ source, flags, inside }) => {
      const wanted = new RegExp(source, flags);
      return [
        ...document.querySelectorAll(`:is(${inside}) :is(a, button, summary, input, select, textarea, [role=option])`),
      ]
        .filter((one) => !one.matches(':disabled'))
        .some((one) => {
          const labels = [...((one as HTMLInputElement).labels ?? [])].map((label) => label.textContent ?? '');
          const own = one.matches('a, button, summary, [role=option]') ? (one.textContent ?? '') : '';
          const said = one.getAttribute('aria-label') ?? [...labels, own].join(' ');
          return wanted.test(said.replace(/\s+/g, ' ').trim());
        });
    },
    { source: name.source, flags: name.flags, inside: within },
    { timeout: patienceMs },
  );

const focused = (page: Page, within: string): Promise<string> =>
  page.evaluate((inside) => {
    const at = document.activeElement;
    if (at === null || at === document.body || at.closest(inside) === null) return '';
    const labels = [...((at as HTMLInputElement).labels ?? [])].map((one) => one.textContent ?? '');
    const own = at.matches('a, button, summary, [role=option]') ? (at.textContent ?? '') : '';
    return (at.getAttribute('aria-label') ?? [...labels, own].join(' ')).replace(/\s+/g, ' ').trim();
  }, within);

export function keyboardOf(page: Page): Keyboard {
  const press = async (...keys: readonly string[]): Promise<void> => {
    for (const key of keys) await page.keyboard.press(key);
  };
  const to = async (name: RegExp, within = 'body'): Promise<void> => {
    await usable(page, name, within).catch(() => {
      throw new Error(`nothing to use is called ${name} in ${within} at ${page.url()}`);
    });
    for (let stop = 0; stop < mostStops; stop++) {
      if (name.test(await focused(page, within))) {
        // What is drawn in this moment may take the focus away with it.
        await page.evaluate(() => new Promise(requestAnimationFrame));
        if (name.test(await focused(page, within))) return;
      }
      await press('Tab');
    }
    throw new Error(`no way by Tab to ${name} in ${within} at ${page.url()}`);
  };
  return {
    to,
    press,
    type: (text) => page.keyboard.type(text),
    choose: async (name, text, within) => {
      await to(name, within);
      await page.waitForFunction((said) => {
        const at = document.activeElement;
        return at instanceof HTMLSelectElement && [...at.options].some((o) => o.text.startsWith(said));
      }, text);
      await page.keyboard.type(text);
      await page.waitForFunction((said) => {
        const at = document.activeElement;
        return at instanceof HTMLSelectElement && at.selectedOptions[0]?.text.startsWith(said);
      }, text);
    },
    fill: async (name, text, within) => {
      await to(name, within);
      await press('ControlOrMeta+a');
      await page.keyboard.type(text);
      await press('Tab');
    },
    enter: async (name, within) => {
      await to(name, within);
      await press('Enter');
    },
    reload: async () => {
      await page.reload();
    },
  };
}
