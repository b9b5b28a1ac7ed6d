// Every requirement by its group: met, not met or not known, why, where the evidence lies; what a person may say of it, and
// what a manager may override. After a release: as it stood then.
import type { RequirementFinding, RequirementGroup } from '../../proving/release/requirement.ts';
import { sayGroup, sayReleaseReason, sayRequirement } from '../../proving/release/words/say.ts';
import { useSaying } from '../animal/say.ts';
import { useSpecies } from '../animal/use-species.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useReader } from '../settings/use-reader.ts';
import { go } from '../shell/router.ts';
import { LawPart } from './law-part.tsx';
import { OverrideForm } from './override-form.tsx';
import type { PlacementSheet } from './placement-api.ts';
import { RequirementMark } from './placement-mark.tsx';
import type { PartProps } from './placement-page.tsx';
import { StatementForm } from './statement-form.tsx';

const groups: readonly RequirementGroup[] = ['home', 'animal', 'law', 'keeper'];

export function RequirementsPart({ sheet, on }: PartProps) {
  const { settings, t } = useSheet();
  const findings = findingsShown(sheet);
  return (
    <>
      {sheet.state === 'released' && <p className="as-it-stood">{t('requirement.asItStood')}</p>}
      {groups.map((group) => {
        const own = findings.filter((finding) => finding.group === group);
        const standing = own.filter((finding) => finding.stands).length;
        return (
          <section key={group} className="sheet-part" aria-labelledby={`group-${group}`}>
            <h2 id={`group-${group}`}>
              {sayGroup(group, settings.language)}{' '}
              <small className="group-count">{t('requirement.count', { n: standing, of: own.length })}</small>
            </h2>
            <ul>
              {own.map((finding) => (
                <Requirement key={finding.id} finding={finding} sheet={sheet} on={on} />
              ))}
            </ul>
            {group === 'law' && <LawPart law={sheet.law} />}
          </section>
        );
      })}
    </>
  );
}

/** A released animal is gone, so that its requirements are told as they were written down with the release. */
function findingsShown(sheet: PlacementSheet): readonly RequirementFinding[] {
  const released = sheet.state === 'released' ? sheet.events.findLast((event) => event.kind === 'released') : undefined;
  if (released === undefined) return sheet.release.findings;
  const stood = (released.body as { requirements: readonly RequirementFinding[] }).requirements;
  return sheet.release.findings.flatMap((now) => {
    const then = stood.find((one) => one.id === now.id);
    return then ? [{ ...now, ...then, statement: null, stands: true }] : [];
  });
}

interface RequirementProps extends PartProps {
  readonly finding: RequirementFinding;
}

/** What stands is one line; what does not says why, what to do, and asks. */
function Requirement({ finding, sheet, on }: RequirementProps) {
  const { settings, t } = useSheet();
  const { nameOf } = useSpecies();
  const reader = useReader();
  const { title, todo } = sayRequirement(finding.id, settings.language);
  const reasons = [...new Set(finding.reasons.map((why) => sayReleaseReason(why, settings.language, nameOf, reader)))];
  const open = sheet.state === 'open';
  const asked = open && !finding.stands;
  // Nothing to say or to override before it is known which law holds.
  const waits = finding.reasons[0]?.key === 'law.homeOpen';
  return (
    <li className="requirement" id={`requirement-${finding.id}`} tabIndex={-1}>
      <RequirementMark answer={finding.answer} overridden={finding.answer !== 'met' && finding.stands} />
      <div>
        <h3 className="requirement-title">{title}</h3>
        <p>
          {reasons.join(' ')} <EvidenceLine finding={finding} sheet={sheet} />
        </p>
        {asked && !waits && <p className="requirement-todo">{todo}</p>}
        {asked && finding.absolute !== null && (
          <p className="field-hint">{t(`requirement.absolute.${finding.absolute}`)}</p>
        )}
        {open && sheet.mayAct && !waits && (
          <StatementForm key={`${finding.id}${finding.statement?.at ?? ''}`} finding={finding} sheet={sheet} on={on} />
        )}
        {!waits && <OverrideForm finding={finding} sheet={sheet} on={on} />}
      </div>
    </li>
  );
}

function EvidenceLine({ finding, sheet }: { readonly finding: RequirementFinding; readonly sheet: PlacementSheet }) {
  const { t } = useSheet();
  const say = useSaying();
  const { at, on, by } = finding.evidence;
  if ((at === 'statement' || at === 'law') && on === null) return null;
  const paths: Readonly<Partial<Record<typeof at, string>>> = {
    plan: `/plan/${sheet.enquiry.id}`,
    enquiry: `/plan/${sheet.enquiry.id}`,
    proof: `/proof/${sheet.enquiry.id}`,
    animal: `/animals/${sheet.animal.id}`,
    'look-over': `/animals/${sheet.animal.id}/look-over`,
  };
  const path = paths[at];
  return (
    <span className="evidence">
      {path ? (
        <a
          href={path}
          onClick={(event) => {
            event.preventDefault();
            go(path);
          }}
        >
          {t(`evidence.${at}`)}
        </a>
      ) : (
        t(`evidence.${at}`)
      )}
      {on && <time dateTime={on}> {say.day(on.slice(0, 10))}</time>}
      {by && `, ${by}`}
    </span>
  );
}
