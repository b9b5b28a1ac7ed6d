// What a path such as "species.corn.all.rhPct" or "thermostats.pulse.drives.heat-mat" is called for a person.
import { isMessageKey } from '../messages/translate.ts';
import { useSheet } from '../settings/settings-context.tsx';
import { useFacts } from '../worker/use-facts.ts';

export function usePathName(): (path: string) => string {
  const { t } = useSheet();
  const facts = useFacts();
  const word = (key: string, otherwise: string): string => (isMessageKey(key) ? t(key) : otherwise);
  return (path) => {
    const [table = '', id = '', ...rest] = path.split('.');
    if (table === 'policy') return word(`policy.${id}`, id);
    const key = rest.at(-1) ?? id;
    const species = facts?.species.find((row) => row.id === id);
    const stage = table === 'species' && rest[0] !== 'all' ? [word(`ref.stage.${rest[0]}`, rest[0] ?? '')] : [];
    const drives = rest[0] === 'drives' ? [t('fact.drives')] : [];
    const row = table === 'care' ? [] : [species?.commonName ?? word(`row.${id}`, id)];
    return [...row, ...stage, ...drives, word(`fact.${key}`, word(`row.${key}`, key))].join(', ');
  };
}
