// What follows a release, in one line on the placement: how much is overdue and due, and the way to it.
import './today.css';
import { useAsked } from '../animal/use-asked.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import { readAftercare } from './today-api.ts';

export function AftercareNote({ id }: { readonly id: string }) {
  const { t } = useSheet();
  const { value } = useAsked(`aftercare-note-${id}`, () => readAftercare(id));
  if (value === null || value.released === null) return null;
  const count = (state: string): number => value.tasks.filter((task) => task.state === state).length;
  const [overdue, due] = [count('overdue'), count('due')];
  const path = `/aftercare/${id}`;
  const mark = overdue > 0 ? 'overdue' : due > 0 ? 'due' : 'open';
  return (
    <p className={`aftercare-note today-${mark}`}>
      <span className="today-mark" aria-hidden="true" />
      <a
        className="today-way"
        href={path}
        onClick={(event) => {
          event.preventDefault();
          go(path);
        }}
      >
        {t('aftercare.note', { overdue, due, later: count('later') })}
      </a>
    </p>
  );
}
