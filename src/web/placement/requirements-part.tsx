// Every requirement by its group: met, not met or not known, why, and where the evidence lies.
import type { RequirementFinding, RequirementGroup } from '../../proving/release/requirement.ts';
import { sayGroup, sayReleaseReason, sayRequirement } from '../../proving/release/words/say.ts';
import { useSaying } from '../animal/say.ts';
import { useSpecies } from '../animal/use-species.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { go } from '../shell/router.ts';
import type { PlacementSheet } from './placement-api.ts';
import { RequirementMark } from './placement-mark.tsx';

const groups: readonly RequirementGroup[] = ['home', 'animal', 'law', 'keeper'];

export function RequirementsPart({ sheet }: { readonly sheet: PlacementSheet }) {
  const { settings } = useSheet();
  return (
    <>
      {groups.map((group) => (
        <section key={group} className="sheet-part" aria-labelledby={`group-${group}`}>
          <h2 id={`group-${group}`}>{sayGroup(group, settings.language)}</h2>
          <ul>
            {sheet.release.findings
              .filter((finding) => finding.group === group)
              .map((finding) => (
                <Requirement key={finding.id} finding={finding} sheet={sheet} />
              ))}
          </ul>
        </section>
      ))}
    </>
  );
}

interface RequirementProps {
  readonly finding: RequirementFinding;
  readonly sheet: PlacementSheet;
}

function Requirement({ finding, sheet }: RequirementProps) {
  const { settings, t } = useSheet();
  const { nameOf } = useSpecies();
  const { title, todo } = sayRequirement(finding.id, settings.language);
  return (
    <li className="requirement" id={`requirement-${finding.id}`}>
      <RequirementMark answer={finding.answer} overridden={finding.answer !== 'met' && finding.stands} />
      <div>
        <h3 className="requirement-title">{title}</h3>
        {finding.reasons.map((why) => {
          const text = sayReleaseReason(why, settings.language, nameOf);
          return <p key={text}>{text}</p>;
        })}
        {!finding.stands && <p className="requirement-todo">{todo}</p>}
        {!finding.stands && finding.absolute !== null && (
          <p className="field-hint">{t(`requirement.absolute.${finding.absolute}`)}</p>
        )}
        <EvidenceLine finding={finding} sheet={sheet} />
      </div>
    </li>
  );
}

function EvidenceLine({ finding, sheet }: RequirementProps) {
  const { t } = useSheet();
  const say = useSaying();
  const { at, on, by } = finding.evidence;
  const paths: Readonly<Partial<Record<typeof at, string>>> = {
    plan: `/plan/${sheet.enquiry.id}`,
    enquiry: `/plan/${sheet.enquiry.id}`,
    proof: `/proof/${sheet.enquiry.id}`,
    animal: `/animals/${sheet.animal.id}`,
    'look-over': `/animals/${sheet.animal.id}/look-over`,
  };
  const path = paths[at];
  return (
    <p className="evidence">
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
    </p>
  );
}
