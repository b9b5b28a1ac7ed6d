// One need of a kit or home in a line: what it is called, what was found, why.
import type { NeedVerdict } from '../../husbandry/need.ts';
import { needName } from '../messages/need-name.ts';
import { needWords } from '../messages/need-words.ts';
import { useSheet } from '../settings/settings-context.tsx';

export function NeedLine({ need, brief = false }: { readonly need: NeedVerdict; readonly brief?: boolean }) {
  const { measure, settings } = useSheet();
  const name = needName(need, settings.language);
  const { found, reasons } = needWords(need, measure);
  return (
    <>
      <span lang={name.lang}>{name.text}:</span> {!brief && <span lang={found.lang}>{found.text}. </span>}
      {reasons.slice(0, brief ? 1 : undefined).map((reason, i) => (
        <span key={reason.text} lang={reason.lang}>
          {i > 0 && ' '}
          {reason.text}
        </span>
      ))}
    </>
  );
}
