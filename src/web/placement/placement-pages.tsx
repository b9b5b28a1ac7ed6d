// Which sheet about placements the address names: the list, or one placement.
import './placement.css';
import { PlacementPage } from './placement-page.tsx';
import { PlacementsPage } from './placements-page.tsx';

export function PlacementPages({ id }: { readonly id: string | null }) {
  return id === null ? <PlacementsPage /> : <PlacementPage key={id} id={id} />;
}
