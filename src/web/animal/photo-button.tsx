// Take or choose a photograph and keep it with the animal.
import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { faultSentences } from '../messages/fault-words.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { keepPhoto } from './animal-api.ts';
import { pictureFrom } from './picture.ts';

interface PhotoButtonProps {
  readonly animalId: string;
  /** What it shows, e.g. the step of the look-over. */
  readonly of: string;
  readonly onKept?: () => void;
}

export function PhotoButton({ animalId, of, onKept }: PhotoButtonProps) {
  const { t, measure } = useSheet();
  const file = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState<string | null>(null);
  const keep = async (chosen: File) => {
    const kept = await keepPhoto(animalId, (await pictureFrom(chosen)).base64, of);
    setSaid(kept.ok ? t('photo.kept') : faultSentences(kept.faults, measure) || t('animals.unreached'));
    if (kept.ok) onKept?.();
  };
  return (
    <>
      <input
        ref={file}
        type="file"
        accept="image/*"
        capture="environment"
        className="visually-hidden"
        aria-label={t('photo.take')}
        onChange={(event) => {
          const chosen = event.target.files?.[0];
          if (chosen) void keep(chosen);
        }}
      />
      <Button className="button button-quiet" onPress={() => file.current?.click()}>
        {t('photo.take')}
      </Button>
      <span role="status" className="field-hint">
        {said}
      </span>
    </>
  );
}
