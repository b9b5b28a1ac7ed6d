// The way from an animal or a home to its placement.
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';

export function PlacementLink({ of, id }: { readonly of: 'animal' | 'enquiry'; readonly id: string }) {
  const { t } = useSheet();
  const path = `/placements?${of}=${id}`;
  return (
    <a
      className="button button-quiet"
      href={path}
      onClick={(event) => {
        event.preventDefault();
        go(path);
      }}
    >
      {t(of === 'animal' ? 'placements.forAnimal' : 'placements.forEnquiry')}
    </a>
  );
}
