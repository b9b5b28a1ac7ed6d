// The HTTP doors onto placements: open one, list them, show one with its whole thread, and all that is done with it.
import type { FastifyReply } from 'fastify';
import type { TSchema } from 'typebox';
import type { DeskContext } from '../../desk/desk-context.ts';
import { openPlacement } from '../../desk/open-placement.ts';
import { overrideRequirement } from '../../desk/override-requirement.ts';
import { placementSheet } from '../../desk/placement-sheet.ts';
import type { PlacementThread } from '../../desk/placement-thread.ts';
import { refuseSale, reopenPlacement, takeBack } from '../../desk/refuse-sale.ts';
import { releaseAnimal } from '../../desk/release-animal.ts';
import { policyLines } from '../../desk/release-policy.ts';
import { shopValues } from '../../desk/shop-values.ts';
import { listPlacements, showPlacement } from '../../desk/show-placement.ts';
import { stateRequirement } from '../../desk/state-requirement.ts';
import type { Result } from '../../shared/result.ts';
import { anyAnswer } from '../animal-schemas.ts';
import { sendFaults } from '../errors.ts';
import {
  openPlacementBody,
  overrideBody,
  placementParams,
  refusalBody,
  releaseBody,
  reopenBody,
  statementBody,
  takeBackBody,
} from '../placement-schemas.ts';
import type { App, Doors } from '../types.ts';
import type { Who } from '../who.ts';

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
      config: { who: 'desk' },
      schema: { tags, summary: 'Placements of this branch, newest first', response: answers },
    },
    async (request) => {
      const desk = doors.desk(request);
      return { placements: await listPlacements(desk), policy: policyLines(await shopValues(desk)) };
    },
  );
  app.get(
    '/api/placements/:id',
    {
      config: { who: 'desk' },
      schema: { tags, summary: 'One placement with its whole thread', params: placementParams, response: answers },
    },
    async (request, reply) => {
      const desk = doors.desk(request);
      return await answer(reply, desk, await showPlacement(desk, request.params.id));
    },
  );
  actRoutes(app, doors);
}

/** What can be done with a placement; each answers with the whole sheet as it is afterwards. */
function actRoutes(app: App, doors: Doors): void {
  app.post(
    '/api/placements/:id/statements',
    doing('desk', 'Say something of a requirement', statementBody),
    async (request, reply) => {
      const desk = doors.desk(request);
      return await answer(reply, desk, await stateRequirement(desk, request.params.id, request.body));
    },
  );
  app.post(
    '/api/placements/:id/overrides',
    doing('manager', 'Override a requirement, or take it back', overrideBody),
    async (request, reply) => {
      const desk = doors.desk(request);
      return await answer(reply, desk, await overrideRequirement(desk, request.params.id, request.body));
    },
  );
  app.post('/api/placements/:id/release', doing('desk', 'Release the animal', releaseBody), async (request, reply) => {
    const desk = doors.desk(request);
    return await answer(reply, desk, await releaseAnimal(desk, request.params.id, request.body));
  });
  app.post('/api/placements/:id/refusal', doing('desk', 'Refuse it', refusalBody), async (request, reply) => {
    const desk = doors.desk(request);
    return await answer(reply, desk, await refuseSale(desk, request.params.id, request.body));
  });
  app.post('/api/placements/:id/reopening', doing('desk', 'Take it up again', reopenBody), async (request, reply) => {
    const desk = doors.desk(request);
    return await answer(reply, desk, await reopenPlacement(desk, request.params.id, request.body));
  });
  app.post(
    '/api/placements/:id/return',
    doing('desk', 'The animal comes back', takeBackBody),
    async (request, reply) => {
      const desk = doors.desk(request);
      return await answer(reply, desk, await takeBack(desk, request.params.id, request.body));
    },
  );
}

const doing = <Body extends TSchema>(who: Who, summary: string, body: Body) => ({
  config: { who },
  schema: { tags, summary, params: placementParams, body, response: answers },
});

const answer = async (reply: FastifyReply, desk: DeskContext, done: Result<PlacementThread>) =>
  done.ok ? reply.send(placementSheet(done.value, desk)) : await sendFaults(reply, done.faults);
