// A word to find the enquiry again; optional, and no place for a person's name.
import { Input, Label, Text, TextField } from 'react-aria-components';
import { useSheet } from '../settings/settings-context.tsx';
import { useDocument } from '../state/document-context.tsx';

export function LabelQuestion() {
  const { t } = useSheet();
  const { document, answer } = useDocument();
  return (
    <TextField
      className="text-field"
      value={document.answers.label}
      maxLength={120}
      onChange={(label) => answer({ label }, 'label')}
    >
      <Label className="field-label">{t('label.label')}</Label>
      <Input className="text-input" />
      <Text slot="description" className="field-hint">
        {t('label.hint')}
      </Text>
    </TextField>
  );
}
