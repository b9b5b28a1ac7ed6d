// The button for language, units, light or dark. What is behind it is fetched when it is first pressed.
import { lazy, memo, Suspense, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { PersonTools } from '../account/person-tools.tsx';
import { useSheet } from '../settings/settings-context.tsx';

const ViewChoices = lazy(async () => ({ default: (await import('./view-choices.tsx')).ViewChoices }));

export const ViewMenu = memo(function ViewMenu() {
  const { t, settings } = useSheet();
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const temperature = settings.temperature === 'F' ? '°F' : '°C';
  return (
    <div className="view-tools">
      <PersonTools />
      <Button
        ref={button}
        className="tool tool-view"
        aria-haspopup="dialog"
        aria-expanded={open}
        onPress={() => setOpen(true)}
      >
        <span className="visually-hidden">{t('view.open')} </span>
        {temperature} · {settings.length} · {settings.book.toUpperCase()}
      </Button>
      {open && (
        <Suspense>
          <ViewChoices anchor={button} onClose={() => setOpen(false)} />
        </Suspense>
      )}
    </div>
  );
});
