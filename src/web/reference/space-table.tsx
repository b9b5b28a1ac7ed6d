// The standards of the picture as a table.
import { useSheet } from '../settings/settings-context.tsx';
import type { SpaceLine } from './compare-space.ts';
import type { Reference } from './reference-api.ts';
import { SourceMark } from './source-mark.tsx';
import { useSpaceWords } from './space-words.ts';

export function SpaceTable({ lines, all }: { readonly lines: readonly SpaceLine[]; readonly all: Reference }) {
  const { t } = useSheet();
  const words = useSpaceWords();
  return (
    <details className="ref-earlier">
      <summary>{t('ref.table')}</summary>
      <section className="ref-scroll" aria-label={t('ref.table')}>
        <table className="ref-table">
          <thead>
            <tr>
              <th scope="col">{t('space.standard')}</th>
              <th scope="col">{t('space.asks', { what: '' })}</th>
              <th scope="col">{t('space.verdict')}</th>
              <th scope="col">{t('ref.source')}</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <tr key={line.standard.id}>
                <th scope="row">{line.standard.name}</th>
                <td>{words.asks(line)}</td>
                <td>{words.verdict(line)}</td>
                <td>
                  <SourceMark of={line.standard} sources={all.sources} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
