// The keeper's link: make one, show it once as text and QR code, see which work, withdraw one.
import { useCallback, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Asked } from '../animal/animal-api.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { Faults } from './faults.tsx';
import { giveLink, readLinks, takeBackLink } from './proof-api.ts';
import { QrPicture } from './qr-picture.tsx';
import { useKept } from './use-kept.ts';

/** Usual life of a link [days]: two weeks until the animal goes home and the first readings after it (our choice). */
const usualDays = 21;

export function KeeperPart({ enquiryId }: { readonly enquiryId: string }) {
  const { t, measure } = useSheet();
  const links = useKept(useCallback(() => readLinks(enquiryId), [enquiryId]));
  const [days, setDays] = useState(usualDays);
  const [secret, setSecret] = useState<string | null>(null);
  const [answer, setAnswer] = useState<Asked<unknown> | null>(null);
  const give = async () => {
    const given = await giveLink(enquiryId, days);
    setAnswer(given);
    if (given.ok) setSecret(given.value.secret);
    links.again();
  };
  const address = secret === null ? null : `${location.origin}/k/${secret}`;
  const day = (iso: string) =>
    new Intl.DateTimeFormat(measure.locale, { day: 'numeric', month: 'long' }).format(new Date(iso));
  return (
    <section className="sheet-part" aria-labelledby="keeper-title">
      <h2 id="keeper-title">{t('proof.keeper')}</h2>
      <p className="field-hint">{t('proof.keeperSay')}</p>
      <label className="field-label">
        {t('proof.keeperDays')}
        <input
          type="number"
          className="text-input"
          min={1}
          max={400}
          value={days}
          onChange={(event) => setDays(Number(event.target.value))}
        />
      </label>
      <Button className="button" onPress={() => void give()}>
        {t('proof.keeperGive')}
      </Button>
      <Faults answer={answer} />
      {address && (
        <div className="keeper-link">
          <QrPicture text={address} label={t('proof.qr')} />
          <p>
            <a href={address}>{address}</a>
          </p>
          <p className="field-hint">{t('proof.keeperOnce')}</p>
        </div>
      )}
      <ul className="proof-list">
        {links.answer?.ok &&
          links.answer.value.links.map((link) => (
            <li key={link.id}>
              <span>{t('proof.keeperUntil', { day: day(link.expiresAt) })}</span>
              {link.withdrawnAt !== null ? (
                <span>{t('proof.keeperGone')}</span>
              ) : new Date(link.expiresAt) <= new Date() ? (
                <span>{t('proof.keeperOver')}</span>
              ) : (
                <Button
                  className="quiet-button"
                  onPress={() => void takeBackLink(enquiryId, link.id).then(links.again)}
                >
                  {t('proof.keeperBack')}
                </Button>
              )}
            </li>
          ))}
      </ul>
    </section>
  );
}
