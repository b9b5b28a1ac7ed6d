// Which season and which moment of its day the drawing shows.
import { Choice } from '../controls/choice.tsx';
import { useSheet } from '../settings/settings-context.tsx';
import { type Moment, usualAt } from './moment.ts';

interface MomentChoiceProps {
  readonly moment: Moment;
  readonly onChange: (moment: Moment) => void;
}

/** The hour shown first when somebody goes by the hour: before dawn (our choice). */
const firstHour = 6;

export function MomentChoice({ moment, onChange }: MomentChoiceProps) {
  const { t, measure } = useSheet();
  const hour = typeof moment.at === 'number' ? moment.at : null;
  return (
    <div className="moment-choice">
      <Choice
        label={t('moment.season')}
        hideLabel
        value={moment.season}
        onChange={(season) => onChange({ season, at: usualAt[season] })}
        options={[
          { value: 'winter', text: t('season.winter') },
          { value: 'summer', text: t('season.summer') },
        ]}
      />
      <Choice
        label={t('moment.at')}
        hideLabel
        value={typeof moment.at === 'number' ? 'hour' : moment.at}
        onChange={(at) => onChange({ ...moment, at: at === 'hour' ? firstHour : at })}
        options={[
          { value: 'night', text: t(moment.season === 'winter' ? 'moment.coldestNight' : 'moment.night') },
          { value: 'noon', text: t(moment.season === 'summer' ? 'moment.hottestMidday' : 'moment.noon') },
          { value: 'hour', text: hour === null ? t('moment.hour') : measure.clock(hour) },
        ]}
      />
    </div>
  );
}
