// One's own account: password, PIN for the shared tablet, passkeys, where one is signed in, the branch one works at.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { NotReached } from '../animal/not-reached.tsx';
import { useAsked } from '../animal/use-asked.ts';
import { Choice } from '../controls/choice.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import { endSession, goToBranch, type OwnAccount, readAccount, signOut, signOutEverywhere } from './account-api.ts';
import { cameIn, lookWhoIsHere, useMe } from './here.ts';
import { PasskeyPart } from './passkey-part.tsx';
import { PasswordPart, PinPart } from './secret-parts.tsx';

export function OwnAccountPage() {
  const { t } = useSheet();
  const me = useMe();
  const { value, failed, again } = useAsked('account', readAccount);
  if (value === null || me === null) return <NotReached failed={failed} again={again} />;
  const blanks = { name: me.name, role: t(`acc.role.${me.role}`), shop: me.shopName, branch: me.branchName };
  return (
    <main className="account-sheet">
      <h1>{t('acc.own')}</h1>
      <p className="lead">{t('acc.ownLead', blanks)}</p>
      <div className="account-tools">
        {(me.role === 'owner' || me.role === 'manager') && (
          <Button className="button button-quiet" onPress={() => go('/people')}>
            {t('acc.toPeople')}
          </Button>
        )}
        <Button className="button button-quiet" onPress={() => void signOut().then(() => location.assign('/'))}>
          {t('acc.signOut')}
        </Button>
      </div>
      {value.branches.length > 1 && <BranchPart branches={value.branches} now={me.branchId} />}
      <PinPart hasPin={me.hasPin} />
      <PasswordPart name={me.name} />
      <PasskeyPart passkeys={value.passkeys} onChange={again} />
      <SessionsPart account={value} onChange={again} />
    </main>
  );
}

function BranchPart({ branches, now }: { readonly branches: OwnAccount['branches']; readonly now: string }) {
  const { t } = useSheet();
  return (
    <section className="sheet-part">
      <h2>{t('acc.branchAt')}</h2>
      <Choice
        label={t('acc.branchAt')}
        hideLabel
        layout="list"
        value={now}
        onChange={(id) => void goToBranch(id).then(cameIn)}
        options={branches.map((branch) => ({ value: branch.id, text: branch.name }))}
      />
    </section>
  );
}

function SessionsPart({ account, onChange }: { readonly account: OwnAccount; readonly onChange: () => void }) {
  const { t, measure } = useSheet();
  const [ending, setEnding] = useState(false);
  const when = new Intl.DateTimeFormat(measure.locale, { dateStyle: 'medium', timeStyle: 'short' });
  const everywhere = async () => {
    setEnding(true);
    await signOutEverywhere();
    await lookWhoIsHere();
    setEnding(false);
  };
  return (
    <section className="sheet-part">
      <h2>{t('acc.sessions')}</h2>
      <ul className="account-list">
        {account.sessions.map((one) => (
          <li key={one.id}>
            <span>
              {t(`acc.session.${one.device}`)}
              {one.here && `, ${t('acc.sessionHere')}`}
              {one.locked && `, ${t('acc.sessionLocked')}`}
              <span className="account-soft">
                {t('acc.sessionSeen', { how: t(`acc.how.${one.how}`), at: when.format(new Date(one.seenAt)) })}
              </span>
            </span>
            {!one.here && (
              <Button className="quiet-button" onPress={() => void endSession(one.id).then(onChange)}>
                {t('acc.end')}
              </Button>
            )}
          </li>
        ))}
      </ul>
      <Button className="button button-quiet account-after" isDisabled={ending} onPress={() => void everywhere()}>
        {t('acc.everywhere')}
      </Button>
    </section>
  );
}
