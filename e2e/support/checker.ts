// The accessibility checker on one page. The pages of this program have no frames: without the second window that puts
// the findings of frames together it takes less than half the time, and a page that has one is refused.
import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';

export function checker(page: Page): AxeBuilder {
  if (page.frames().length > 1) throw new Error('a page with frames: the checker must look into each');
  return new AxeBuilder({ page }).setLegacyMode(true);
}
