// Language, units, light or dark: a small sheet of choices behind one button.
import { Dialog, Popover } from 'react-aria-components';
import { Choice } from '../controls/choice.tsx';
import { languageName } from '../messages/translate.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useLanguageCodes } from '../settings/use-language-codes.ts';

interface ViewChoicesProps {
  readonly anchor: React.RefObject<HTMLButtonElement | null>;
  readonly onClose: () => void;
}

export function ViewChoices({ anchor, onClose }: ViewChoicesProps) {
  const { t, settings, change } = useSheet();
  const codes = useLanguageCodes();
  return (
    <Popover
      className="popover view-popover"
      placement="bottom end"
      triggerRef={anchor}
      isOpen
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
    >
      <Dialog className="view-dialog" aria-label={t('view.open')}>
        <Choice
          label={t('view.temperature')}
          value={settings.temperature}
          onChange={(value) => change({ temperature: value })}
          options={[
            { value: 'C', text: '°C' },
            { value: 'F', text: '°F' },
          ]}
        />
        <Choice
          label={t('view.length')}
          value={settings.length}
          onChange={(value) => change({ length: value })}
          options={[
            { value: 'cm', text: 'cm' },
            { value: 'in', text: 'in' },
          ]}
        />
        <Choice
          label={t('view.mass')}
          value={settings.mass}
          onChange={(value) => change({ mass: value })}
          options={[
            { value: 'g', text: 'g' },
            { value: 'oz', text: 'oz' },
          ]}
        />
        <Choice
          label={t('view.language')}
          value={settings.book}
          onChange={(value) => change({ book: value })}
          options={codes.map((code) => ({ value: code, text: languageName(code) }))}
        />
        <Choice
          label={t('view.sheet')}
          value={settings.sheet}
          onChange={(value) => change({ sheet: value })}
          options={[
            { value: 'auto', text: t('view.auto') },
            { value: 'light', text: t('view.light') },
            { value: 'dark', text: t('view.dark') },
          ]}
        />
      </Dialog>
    </Popover>
  );
}
