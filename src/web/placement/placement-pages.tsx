// Which sheet about placements the address names: the list, or one placement.
// The list and its faults are drawn as those of animals and proofs are.
import '../animal/animal.css';
import '../proof/proof.css';
import './placement.css';
import { PlacementPage } from './placement-page.tsx';
import { PlacementsPage } from './placements-page.tsx';

export function PlacementPages({ id }: { readonly id: string | null }) {
  return id === null ? <PlacementsPage /> : <PlacementPage key={id} id={id} />;
}
