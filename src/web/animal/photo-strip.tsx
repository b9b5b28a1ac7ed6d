// The photographs of the animal, newest first, each with its day and what it shows.
import { useSheet } from '../settings/settings-context.tsx';
import type { AnimalSheet } from './animal-api.ts';
import { PhotoButton } from './photo-button.tsx';
import { useSaying } from './say.ts';

interface PhotoStripProps {
  readonly sheet: AnimalSheet;
  readonly onKept: () => void;
}

export function PhotoStrip({ sheet, onKept }: PhotoStripProps) {
  const { t } = useSheet();
  const say = useSaying();
  const photos = sheet.photos.flatMap((event) => (event.kind === 'photo' ? [event] : [])).reverse();
  return (
    <section className={photos.length === 0 ? 'sheet-part no-paper' : 'sheet-part'}>
      <h2>{t('photo.title')}</h2>
      <ul className="photo-strip">
        {photos.map(({ id, on, body }) => (
          <li key={id}>
            <figure>
              <img
                src={`/api/animals/${sheet.id}/photos/${body.photoId}`}
                alt={t('photo.of', { on: say.day(on), what: body.of })}
                loading="lazy"
              />
              <figcaption>{say.day(on)}</figcaption>
            </figure>
          </li>
        ))}
      </ul>
      <PhotoButton animalId={sheet.id} of="whole" onKept={onKept} />
    </section>
  );
}
