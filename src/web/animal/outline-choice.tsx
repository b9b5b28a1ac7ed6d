// Three cross-sections to choose from by eye: ridge, rounded, groove. Drawn as cut through the middle of the body.
import { HelpLine } from '../controls/help-line.tsx';
import { useSheet } from '../settings/settings-context.tsx';

const outlines = [
  { id: 'thin', path: 'M10 70C14 52 26 40 36 30L40 20L44 30C54 40 66 52 70 70C64 75 16 75 10 70z' },
  { id: 'good', path: 'M8 68C8 40 20 22 36 20Q40 22 44 20C60 22 72 40 72 68C66 75 14 75 8 68z' },
  { id: 'fat', path: 'M4 66C2 40 14 18 30 18C36 18 38 24 40 29C42 24 44 18 50 18C66 18 78 40 76 66C70 76 10 76 4 66z' },
] as const;

interface OutlineChoiceProps {
  readonly chosen: string;
  readonly onChoose: (outline: string) => void;
}

export function OutlineChoice({ chosen, onChoose }: OutlineChoiceProps) {
  const { t } = useSheet();
  return (
    <fieldset className="outline-choice" aria-describedby="look-outline-help">
      <legend>{t('look.outlineTitle')}</legend>
      {outlines.map((outline) => (
        <label key={outline.id}>
          <input type="radio" name="outline" checked={chosen === outline.id} onChange={() => onChoose(outline.id)} />
          <svg viewBox="0 0 80 84" aria-hidden="true">
            <path d={outline.path} className="outline-skin" />
            <circle cx="40" cy="36" r="4" className="outline-spine" />
          </svg>
          <span>{t(`look.outline.${outline.id}`)}</span>
        </label>
      ))}
      <HelpLine id="look-outline-help" text={t('help.look.outline')} />
    </fieldset>
  );
}
