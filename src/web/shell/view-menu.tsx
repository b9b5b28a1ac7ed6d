// Language, units, light or dark: a small sheet of choices behind one button.
import { Button, Dialog, DialogTrigger, Popover } from 'react-aria-components';
import { Choice } from '../controls/choice.tsx';
import { useSheet } from '../settings/settings-context.tsx';

export function ViewMenu() {
  const { t, settings, change } = useSheet();
  const temperature = settings.temperature === 'F' ? '°F' : '°C';
  return (
    <DialogTrigger>
      <Button className="tool tool-view">
        <span className="visually-hidden">{t('view.open')} </span>
        {temperature} · {settings.length} · {settings.language.toUpperCase()}
      </Button>
      <Popover className="popover view-popover" placement="bottom end">
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
            label={t('view.language')}
            value={settings.language}
            onChange={(value) => change({ language: value })}
            options={[
              { value: 'en', text: t('view.en') },
              { value: 'de', text: t('view.de') },
            ]}
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
    </DialogTrigger>
  );
}
