// A word to find the enquiry again; optional, and no place for a person's name.
import { memo } from 'react';
import { Input, Label, Text, TextField } from 'react-aria-components';
import { useSheet } from '../settings/settings-context.tsx';
import { useAnswer, useDocumentActions } from '../state/document-context.tsx';

export const LabelQuestion = memo(function LabelQuestion() {
  const { t } = useSheet();
  const { answer } = useDocumentActions();
  const label = useAnswer('label');
  return (
    <TextField
      className="text-field"
      value={label}
      maxLength={120}
      onChange={(next) => answer({ label: next }, 'label')}
    >
      <Label className="field-label">{t('label.label')}</Label>
      <Input className="text-input" />
      <Text slot="description" className="field-hint">
        {t('label.hint')}
      </Text>
    </TextField>
  );
});
