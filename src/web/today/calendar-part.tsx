// Calendars: a file to take in once, or an address that a calendar program fetches; given out, told once, taken back.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useSaying } from '../animal/say.ts';
import { useAsked } from '../animal/use-asked.ts';
import { paperQuery } from '../settings/paper-query.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { type FeedShown, giveFeed, listFeeds, takeBackFeed } from './today-api.ts';

interface PlacementCalendarProps {
  readonly id: string;
  readonly feeds: readonly FeedShown[];
  readonly again: () => void;
}

export function PlacementCalendar({ id, feeds, again }: PlacementCalendarProps) {
  const { t, settings } = useSheet();
  return (
    <section className="today-part">
      <h2>{t('calendar.title')}</h2>
      <p className="field-hint">{t('calendar.say')}</p>
      <p>
        <a className="button" href={`/api/placements/${id}/calendar.ics?${paperQuery(settings)}`} download>
          {t('calendar.file')}
        </a>
      </p>
      <Feeds id={id} feeds={feeds} again={again} give={t('calendar.giveKeeper')} />
    </section>
  );
}

/** The calendar of the whole branch, folded away: it is set up once. */
export function BranchCalendar() {
  const { t } = useSheet();
  const { value, again } = useAsked('feeds', listFeeds);
  return (
    <details className="today-part today-calendar">
      <summary>{t('calendar.branch')}</summary>
      <p className="field-hint">{t('calendar.branchSay')}</p>
      <Feeds id={null} feeds={value?.feeds ?? []} again={again} give={t('calendar.giveBranch')} />
    </details>
  );
}

interface FeedsProps {
  readonly id: string | null;
  readonly feeds: readonly FeedShown[];
  readonly again: () => void;
  readonly give: string;
}

function Feeds({ id, feeds, again, give }: FeedsProps) {
  const { t, settings } = useSheet();
  const say = useSaying();
  const [address, setAddress] = useState<string | null>(null);
  const make = async () => {
    const given = await giveFeed(id, settings);
    if (given.ok) setAddress(`${location.origin}/api/calendar/${given.value.secret}.ics`);
    again();
  };
  const back = async (feedId: string) => {
    await takeBackFeed(id, feedId);
    setAddress(null);
    again();
  };
  return (
    <>
      <Button className="button button-quiet" onPress={() => void make()}>
        {give}
      </Button>
      {address && (
        <p role="status" className="calendar-address">
          <a href={address}>{address}</a>
          <span className="field-hint">{t('calendar.once')}</span>
        </p>
      )}
      <ul className="proof-list">
        {feeds.map((feed) => (
          <li key={feed.id}>
            <span>
              {t('calendar.given', { day: say.day(feed.at.slice(0, 10)), by: feed.by, language: feed.language })}
            </span>
            <Button className="quiet-button" onPress={() => void back(feed.id)}>
              {t('calendar.takeBack')}
            </Button>
          </li>
        ))}
      </ul>
    </>
  );
}
