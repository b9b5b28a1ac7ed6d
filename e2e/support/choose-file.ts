// A file is chosen in the browser's own window, as a person does who presses the button that opens it.
import type { FileChooser, Page } from 'playwright-core';

/** The page hands its window of files to the journey from when it has heard that one is awaited. That word and the press
 *  reach it by separate ways, and on a busy machine the press came first: a window opened that nobody saw. A question that
 *  the page answers goes the way of that word, and so stands behind it.
 *  @param open  presses what opens the window */
export async function fileWindow(page: Page, open: () => Promise<void>): Promise<FileChooser> {
  const opened = page.waitForEvent('filechooser');
  const pressed = page.evaluate(() => document.readyState).then(open);
  const [window] = await Promise.all([opened, pressed]);
  return window;
}
