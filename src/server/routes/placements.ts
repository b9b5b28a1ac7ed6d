// The HTTP doors onto placements: open one, list them, show one with its whole thread.
import type { FastifyReply } from 'fastify';
import { openPlacement } from '../../desk/open-placement.ts';
import { placementSheet } from '../../desk/placement-sheet.ts';
import { listPlacements, showPlacement } from '../../desk/show-placement.ts';
import { anyAnswer } from '../animal-schemas.ts';
import { sendFaults } from '../errors.ts';
import { openPlacementBody, placementParams } from '../placement-schemas.ts';
import type { App, Doors } from '../types.ts';

const tags = ['placements'];
const answers = { 200: anyAnswer };

export function placementRoutes(app: App, doors: Doors): void {
  app.post(
    '/api/placements',
    {
      config: { who: 'desk' },
      schema: {
        tags,
        summary: 'Open a placement: this animal for this home; the same one again while it stands open',
        body: openPlacementBody,
        response: { 200: anyAnswer, 201: anyAnswer },
      },
    },
    async (request, reply) => {
      const opened = await openPlacement(doors.desk(request), request.body);
      if (!opened.ok) return await sendFaults(reply, opened.faults);
      return reply.code(opened.value.again ? 200 : 201).send(opened.value);
    },
  );
  app.get(
    '/api/placements',
    {
      config: { who: 'register' },
      schema: { tags, summary: 'Placements of this branch, newest first', response: answers },
    },
    async (request) => ({ placements: await listPlacements(doors.desk(request)) }),
  );
  app.get(
    '/api/placements/:id',
    {
      config: { who: 'register' },
      schema: { tags, summary: 'One placement with its whole thread', params: placementParams, response: answers },
    },
    async (request, reply) => await showSheet(doors, request, request.params.id, reply),
  );
}

async function showSheet(doors: Doors, request: Parameters<Doors['desk']>[0], id: string, reply: FastifyReply) {
  const desk = doors.desk(request);
  const shown = await showPlacement(desk, id);
  return shown.ok ? reply.send(placementSheet(shown.value, desk)) : await sendFaults(reply, shown.faults);
}
