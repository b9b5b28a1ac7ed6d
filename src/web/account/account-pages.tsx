// Which sheet about accounts the address names: one's own, or the people who work here.
import { OwnAccountPage } from './own-account-page.tsx';
import { PeoplePage } from './people-page.tsx';

export function AccountPages({ path }: { readonly path: string }) {
  return path.startsWith('/people') ? <PeoplePage /> : <OwnAccountPage />;
}
