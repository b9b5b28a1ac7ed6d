// The animal comes back: why, and where it goes. It goes into quarantine by itself.
import { Button } from 'react-aria-components';
import { Choice } from '../controls/choice.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import type { PartProps } from './placement-page.tsx';
import { useDraft, useHadDraft } from './use-draft.ts';
import { WordsField } from './words-field.tsx';

const reasons = ['keeper', 'home', 'animal', 'household', 'other'] as const;

export function TakeBackForm({ sheet, on }: PartProps) {
  const { t } = useSheet();
  const [chosen, setChosen] = useDraft(sheet.id, 'return-reason');
  const reason = reasons.find((one) => one === chosen) ?? null;
  const [text, setText] = useDraft(sheet.id, 'return-text');
  const [enclosure, setEnclosure] = useDraft(sheet.id, 'return-enclosure');
  const hadDraft = useHadDraft(sheet.id, 'return-reason', 'return-text', 'return-enclosure');
  const ready = reason !== null && enclosure.trim() !== '';
  return (
    <details className="take-back" open={hadDraft}>
      <summary>{t('return.title')}</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (!ready) return;
          on.act('return', { reason, text: text.trim(), enclosure: enclosure.trim() });
          setChosen('');
          setText('');
          setEnclosure('');
        }}
      >
        <p className="field-hint">{t('return.say')}</p>
        <Choice
          label={t('return.why')}
          layout="list"
          value={reason}
          options={reasons.map((value) => ({ value, text: t(`return.${value}`) }))}
          onChange={setChosen}
        />
        <WordsField label={t('return.enclosure')} value={enclosure} onChange={setEnclosure} maxLength={80} />
        <WordsField label={t('return.text')} value={text} onChange={setText} />
        <Button className="button" type="submit" isDisabled={!ready}>
          {t('return.do')}
        </Button>
      </form>
    </details>
  );
}
