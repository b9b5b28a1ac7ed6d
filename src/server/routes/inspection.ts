// The HTTP doors for an inspector: the register as data, as pages, as a table.
import { type InspectionChoice, inspectRegister } from '../../desk/inspect-register.ts';
import { inspectionPdf } from '../../desk/inspection-page.ts';
import { inspectionCsv } from '../../desk/inspection-table.ts';
import { paperUnits } from '../../desk/paper-units.ts';
import { anyAnswer, inspectionQuery } from '../animal-schemas.ts';
import { askedUnits } from '../paper-query.ts';
import type { App, Doors } from '../types.ts';

const tags = ['inspection'];

interface Query {
  readonly search?: string;
  readonly years?: string;
  readonly animalId?: string;
}

const choiceOf = (query: Query): InspectionChoice => ({
  search: query.search ?? '',
  years: query.years === undefined ? null : Number(query.years),
  animalId: query.animalId ?? null,
});

export function inspectionRoutes(app: App, doors: Doors): void {
  app.get(
    '/api/inspection',
    {
      config: { who: 'register' },
      schema: {
        tags,
        summary: 'Register, what is missing, corrections',
        querystring: inspectionQuery,
        response: { 200: anyAnswer },
      },
    },
    async (request) => {
      const inspection = await inspectRegister(doors.desk(request), choiceOf(request.query));
      return {
        ...inspection,
        animals: inspection.animals.map(({ record, headings, corrections, goneOn }) => ({
          id: record.row.id,
          enclosure: record.row.enclosure,
          gone: record.row.gone,
          speciesId: record.species.id,
          entry: record.entry,
          headings,
          corrections,
          goneOn,
        })),
      };
    },
  );
  app.get(
    '/api/inspection.pdf',
    { config: { who: 'register' }, schema: { tags, summary: 'The same as A4 pages', querystring: inspectionQuery } },
    async (request, reply) => {
      const desk = doors.desk(request);
      const inspection = await inspectRegister(desk, choiceOf(request.query));
      const pdf = inspectionPdf(inspection, paperUnits(askedUnits(request.query), inspection.place), desk.clock.now());
      return reply.type('application/pdf').header('content-disposition', 'inline; filename="register.pdf"').send(pdf);
    },
  );
  app.get(
    '/api/inspection.csv',
    { config: { who: 'register' }, schema: { tags, summary: 'The same as a table', querystring: inspectionQuery } },
    async (request, reply) => {
      const inspection = await inspectRegister(doors.desk(request), choiceOf(request.query));
      const csv = inspectionCsv(inspection, paperUnits(askedUnits(request.query), inspection.place).language);
      return reply
        .type('text/csv; charset=utf-8')
        .header('content-disposition', 'attachment; filename="register.csv"')
        .send(csv);
    },
  );
}
