// All placements of the branch, open ones first; and the way to open one for an animal and an enquiry.

import { useCallback, useState } from 'react';
import { Button } from 'react-aria-components';
import { type AnimalLine, type Asked, listAnimals } from '../animal/animal-api.ts';
import { NotReached } from '../animal/not-reached.tsx';
import { useAsked } from '../animal/use-asked.ts';
import { useSpecies } from '../animal/use-species.ts';
import { type EnquiryStamp, listEnquiries } from '../api/client.ts';
import { useHomeTitle } from '../controls/home-title.ts';
import { Faults } from '../proof/faults.tsx';
import { useKept } from '../proof/use-kept.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import { useBegun } from '../state/begun.ts';
import { DueErasures } from './due-erasures.tsx';
import { listPlacements, openPlacement, type PlacementLine } from './placement-api.ts';
import { StateMark } from './placement-mark.tsx';
import { PolicyPart } from './policy-part.tsx';

export function PlacementsPage() {
  const { t } = useSheet();
  const { value, failed, again } = useAsked('placements', listPlacements);
  if (value === null) return <NotReached failed={failed} again={again} />;
  const open = value.placements.filter((one) => one.state === 'open');
  const ended = value.placements.filter((one) => one.state !== 'open');
  return (
    <main className="animal-sheet placements">
      <div className="sheet-head">
        <h1>{t('placements.title')}</h1>
        <p className="lead">{t('placements.lead', { open: open.length, ended: ended.length })}</p>
      </div>
      <NewPlacement />
      <PlacementList title={t('placements.open')} lines={open} none={t('placements.noneOpen')} />
      {ended.length > 0 && <PlacementList title={t('placements.ended')} lines={ended} none="" />}
      <PolicyPart lines={value.policy} onChange={again} />
      <DueErasures />
    </main>
  );
}

interface ListProps {
  readonly title: string;
  readonly lines: readonly PlacementLine[];
  readonly none: string;
}

function PlacementList({ title, lines, none }: ListProps) {
  const { measure } = useSheet();
  const { nameOf } = useSpecies();
  const homeTitle = useHomeTitle();
  const date = new Intl.DateTimeFormat(measure.locale, { dateStyle: 'medium' });
  return (
    <section className="sheet-part">
      <h2>{title}</h2>
      {lines.length === 0 && <p className="lead">{none}</p>}
      <ul>
        {lines.map((one) => (
          <li key={one.id}>
            <a
              className="placement-row"
              href={`/placement/${one.id}`}
              onClick={(event) => {
                event.preventDefault();
                go(`/placement/${one.id}`);
              }}
            >
              <span className="animal-name">
                {one.callName || one.animalId.slice(0, 8)}
                <i>{nameOf(one.speciesId)}</i>
              </span>
              <span>{homeTitle(one.title) || one.enquiryId.slice(0, 8)}</span>
              <StateMark state={one.state} />
              <time dateTime={one.changedAt}>{date.format(new Date(one.changedAt))}</time>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Animal or enquiry may come with the address, from the sheet on which somebody decided to go on. */
function NewPlacement() {
  const { t } = useSheet();
  const { nameOf } = useSpecies();
  const asked = new URLSearchParams(location.search);
  const animals = useKept(useCallback(() => listAnimals(), []));
  const enquiries = useKept(useCallback(() => listEnquiries(), []));
  const first = { animalId: asked.get('animal') ?? '', enquiryId: asked.get('enquiry') ?? '' };
  const { now, change, forget } = useBegun(`placement-${first.animalId}-${first.enquiryId}`, first);
  const { animalId, enquiryId } = now;
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const here: readonly AnimalLine[] = animals.answer?.ok ? animals.answer.value.animals : [];
  const homes: readonly EnquiryStamp[] = enquiries.answer?.ok ? enquiries.answer.value.enquiries : [];
  const open = async () => {
    const opened = await openPlacement(enquiryId, animalId);
    setAnswer(opened);
    if (!opened.ok) return;
    forget();
    go(`/placement/${opened.value.id}`);
  };
  return (
    <section className="sheet-part" aria-labelledby="new-placement">
      <h2 id="new-placement">{t('placements.new')}</h2>
      <form
        className="placement-new"
        onSubmit={(event) => {
          event.preventDefault();
          void open();
        }}
      >
        <label className="field-label">
          {t('placements.animal')}
          <select
            className="text-input"
            value={animalId}
            onChange={(event) => change({ animalId: event.target.value })}
          >
            <option value="">{t('placements.choose')}</option>
            {here.map((one) => (
              <option key={one.id} value={one.id}>
                {`${one.callName || one.id.slice(0, 8)}, ${nameOf(one.speciesId)}, ${one.enclosure}`}
              </option>
            ))}
          </select>
        </label>
        <label className="field-label">
          {t('placements.enquiry')}
          <select
            className="text-input"
            value={enquiryId}
            onChange={(event) => change({ enquiryId: event.target.value })}
          >
            <option value="">{t('placements.choose')}</option>
            {homes.map((one) => (
              <option key={one.id} value={one.id}>
                {one.title || one.id.slice(0, 8)}
              </option>
            ))}
          </select>
        </label>
        <Button className="button" type="submit" isDisabled={animalId === '' || enquiryId === ''}>
          {t('placements.openIt')}
        </Button>
        <Faults answer={answer} />
      </form>
    </section>
  );
}
