// What a person says of a requirement: yes or no, a few words, a place. Begun words stay on the device until they are sent.
import { Button } from 'react-aria-components';
import { places } from '../../husbandry/law-rule.ts';
import { type RequirementFinding, statementForms } from '../../proving/release/requirement.ts';
import { sayRequirement } from '../../proving/release/words/say.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { CautionsToSay } from './cautions-to-say.tsx';
import type { PartProps } from './placement-page.tsx';
import { useDraft, useHadDraft } from './use-draft.ts';
import { WordsField } from './words-field.tsx';

interface StatementProps extends PartProps {
  readonly finding: RequirementFinding;
}

/** Asked openly where the answer is missing; folded away where it can be corrected. */
export function StatementForm(props: StatementProps) {
  const { finding, sheet } = props;
  const { t } = useSheet();
  const hadDraft = useHadDraft(sheet.id, finding.id, `${finding.id}-place`);
  if (statementForms[finding.id] === undefined) return null;
  // Where nothing is asked there is nothing to say: no treatment runs, no rule wants a licence.
  const asks: readonly string[] = ['treatment', 'species-lawful', 'licences'];
  if (finding.answer === 'met' && finding.statement === null && asks.includes(finding.id)) return null;
  const asked = !finding.stands && finding.absolute !== 'law';
  if (asked && finding.statement?.answer !== 'no') return <StatementFields {...props} />;
  return (
    <details open={hadDraft}>
      <summary>{t(finding.statement ? 'statement.change' : 'statement.say')}</summary>
      <StatementFields {...props} />
    </details>
  );
}

function StatementFields({ finding, sheet, on }: StatementProps) {
  const { settings, t } = useSheet();
  const { id, statement } = finding;
  const form = statementForms[id];
  const words = sayRequirement(id, settings.language);
  const [text, setText] = useDraft(sheet.id, id, statement?.text ?? '');
  const [place, setPlace, sentPlace] = useDraft(sheet.id, `${id}-place`, statement?.place ?? '');
  const say = (answer: 'yes' | 'no' | 'open') => {
    on.act('statements', {
      requirement: id,
      answer,
      text: form?.text === 'none' || answer === 'open' ? '' : text.trim(),
      place: form?.place && answer === 'yes' ? place : null,
      years: form?.years && answer !== 'open' ? sheet.ageYears : null,
    });
    setText('');
    sentPlace(answer === 'yes' ? place : '');
  };
  const ready = (form?.text !== 'needed' || text.trim().length > 1) && (!form?.place || place !== '');
  return (
    <div className="statement">
      <p className="statement-ask">{words.ask?.replace('{years}', String(sheet.ageYears))}</p>
      <CautionsToSay id={id} />
      {words.text !== undefined && <WordsField label={words.text} value={text} onChange={setText} />}
      {form?.place && (
        <label className="field-label">
          {t('statement.place')}
          <select className="text-input" value={place} onChange={(event) => setPlace(event.target.value)}>
            <option value="">{t('placements.choose')}</option>
            {places.map((one) => (
              <option key={one} value={one}>
                {t(`lawplace.${one}`)}
              </option>
            ))}
          </select>
        </label>
      )}
      <div className="statement-row">
        <Button className="button" isDisabled={!ready} onPress={() => say('yes')}>
          {t(form?.place || id === 'vet' ? 'statement.keep' : 'statement.yes')}
        </Button>
        {!form?.place && (
          <Button className="button button-quiet" onPress={() => say('no')}>
            {t(id === 'vet' ? 'statement.noVet' : 'statement.no')}
          </Button>
        )}
        {statement && statement.answer !== 'open' && (
          <Button className="quiet-button" onPress={() => say('open')}>
            {t('statement.takeBack')}
          </Button>
        )}
      </div>
    </div>
  );
}
