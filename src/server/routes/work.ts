// The HTTP door by which somebody stops what they wait for, and hears whether anything of it was kept.
import { Type } from 'typebox';
import { stopWaiting } from '../../desk/stop-work.ts';
import type { App, Doors } from '../types.ts';
import { workId } from '../work-id.ts';

const stopped = Type.Object({
  keptId: Type.Union([Type.String(), Type.Null()], { description: 'Id of the plan, file or proof that was kept.' }),
  ended: Type.Union([Type.Literal('stopped'), Type.Literal('kept')], {
    description: '"stopped": nothing of it is kept, now or later. "kept": its outcome was kept before the stop came.',
  }),
});

export function workRoutes(app: App, doors: Doors): void {
  app.post(
    '/api/work/:id/stop',
    {
      config: { who: 'desk' },
      schema: {
        tags: ['program'],
        summary: 'Stop work that was asked for under this id, and hear whether its outcome is kept',
        params: Type.Object({ id: workId }),
        response: { 200: stopped },
      },
    },
    async (request) => await stopWaiting(doors.desk(request), request.params.id),
  );
}
