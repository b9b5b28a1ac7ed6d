// The way from a plan to its proof. Readings belong to an enquiry that is kept.
import { PlacementLink } from '../placement/placement-link.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import { useDocument } from '../state/document-context.tsx';

export function ProofLink() {
  const { t } = useSheet();
  const { savedAs } = useDocument();
  if (!savedAs) return <p className="field-hint">{t('proof.saveFirst')}</p>;
  const path = `/proof/${savedAs.id}`;
  return (
    <p className="plan-ways">
      <a
        className="button button-quiet"
        href={path}
        onClick={(event) => {
          event.preventDefault();
          go(path);
        }}
      >
        {t('proof.open')}
      </a>
      <PlacementLink of="enquiry" id={savedAs.id} />
    </p>
  );
}
