// Which reference screen the address names: list, one species, its space standards.
import './reference.css';
import { ListsPage } from './lists-page.tsx';
import { SpacePage } from './space-page.tsx';
import { SpeciesListPage } from './species-list-page.tsx';
import { SpeciesPage } from './species-page.tsx';

export function ReferencePages({ path }: { readonly path: string }) {
  if (/^\/lists\/?$/.test(path)) return <ListsPage />;
  const [, sheet, id] = /^\/(species|space)\/([a-z0-9-]+)\/?$/.exec(path) ?? [];
  if (!id) return <SpeciesListPage />;
  return sheet === 'space' ? <SpacePage key={id} id={id} /> : <SpeciesPage key={id} id={id} />;
}
