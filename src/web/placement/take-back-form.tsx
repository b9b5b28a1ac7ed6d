// The animal comes back: why, and where it goes. It goes into quarantine by itself.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { Choice } from '../controls/choice.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import type { PartProps } from './placement-page.tsx';
import { useDraft } from './use-draft.ts';
import { WordsField } from './words-field.tsx';

const reasons = ['keeper', 'home', 'animal', 'household', 'other'] as const;

export function TakeBackForm({ sheet, on }: PartProps) {
  const { t } = useSheet();
  const [reason, setReason] = useState<(typeof reasons)[number] | null>(null);
  const [text, setText] = useDraft(sheet.id, 'return-text');
  const [enclosure, setEnclosure] = useDraft(sheet.id, 'return-enclosure');
  const ready = reason !== null && enclosure.trim() !== '';
  return (
    <details className="take-back">
      <summary>{t('return.title')}</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (!ready) return;
          on.act('return', { reason, text: text.trim(), enclosure: enclosure.trim() });
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
          onChange={setReason}
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
