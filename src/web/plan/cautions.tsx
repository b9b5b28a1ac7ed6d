// What can hurt a person or the animal here, and who decides about it; always with source and date.
import { memo } from 'react';
import type { Caution } from '../../husbandry/fact-tables.ts';
import { proseInUnits } from '../../shared/prose-units.ts';
import { SourceNote } from '../controls/source-note.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import type { FactsBrief } from '../worker/protocol.ts';

const own = ['caution.electric', 'caution.fire', 'caution.burns', 'caution.illness'] as const;

export const Cautions = memo(function Cautions({ facts }: { readonly facts: FactsBrief | null }) {
  const { t, measure } = useSheet();
  const sourced: readonly Caution[] = facts?.cautions ?? [];
  return (
    <section className="sheet-part cautions" aria-labelledby="cautions-title">
      <h2 id="cautions-title">{t('caution.title')}</h2>
      <ul>
        {own.map((key) => (
          <li key={key}>{t(key)}</li>
        ))}
      </ul>
      {sourced.length > 0 && (
        <details className="table-behind">
          <summary>{t('caution.sources')}</summary>
          <ul>
            {sourced.map((row) => (
              <li key={row.id}>
                {proseInUnits(row.say, measure)} <SourceNote facts={facts} source={row.source} read={row.read} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
});
