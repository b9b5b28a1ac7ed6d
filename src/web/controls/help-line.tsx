// The small line below a field that says what it is for. Ties itself to nothing: the field names its id in aria-describedby.
import { isMessageKey } from '../messages/translate.ts';
import { useSheet } from '../settings/settings-context.tsx';

/** The line of a field that has one, else nothing: plain fields need none.
 *  @param place names the form and the field, e.g. "register.sex" */
export function useHelp(): (place: string) => string | undefined {
  const { t } = useSheet();
  return (place) => {
    const key = `help.${place}`;
    return isMessageKey(key) ? t(key) : undefined;
  };
}

interface HelpLineProps {
  readonly id: string;
  readonly text: string | undefined;
}

export function HelpLine({ id, text }: HelpLineProps) {
  if (text === undefined) return null;
  return (
    <span id={id} className="field-hint">
      {text}
    </span>
  );
}
