/**
 * The words of a house folder.
 *
 * Takes nothing from disk. Gives the schema, `HouseSpec` (as someone writes it) and `House` (checked, with
 * lengths, dates and money read). Types, checking, the JSON Schema for editors and the README's field table
 * all come from here. Never computes anything about the house. Start reading at `houseSchema`, then the
 * fields it names.
 */
import { z } from 'zod';
import { text } from './field-kinds.js';
import { duties } from './fields/duties.js';
import { identity, person } from './fields/identity.js';
import { listing } from './fields/listing.js';
import { money } from './fields/money.js';
import { answer, careTask, conveyed, document, due, lead, permit, photo } from './fields/papers.js';
import {
  alarm,
  guard,
  level,
  measured,
  poolBarrier,
  publicRecord,
  room,
  stair,
  structure,
} from './fields/space.js';
import { condition, system, workItem } from './fields/things.js';

export const houseSchema = z
  .strictObject({
    house: identity.describe('What and where the house is.'),
    people: z.array(person).default([]).describe('Who was hired.'),
    measured: measured.optional().describe('Who measured the house, when and how.'),
    record: publicRecord.optional().describe('What the public record says its size is.'),
    levels: z.array(level).default([]).describe('The floors of the house, lowest first.'),
    structures: z
      .array(structure)
      .default([])
      .describe('Garage, porch, deck and other things that are no level of the house.'),
    rooms: z.array(room).default([]).describe('Rooms and their finishes.'),
    systems: z.array(system).default([]).describe('Systems and appliances.'),
    alarms: z.array(alarm).default([]).describe('Smoke and carbon monoxide alarms.'),
    stairs: z.array(stair).default([]).describe('Flights of stairs.'),
    guards: z.array(guard).default([]).describe('Drops and their guards.'),
    pool: z
      .strictObject({ barriers: z.array(poolBarrier).default([]).describe('What stands around it.') })
      .optional()
      .describe('A pool and what stands around it.'),
    work: z.array(workItem).default([]).describe('What was done.'),
    conditions: z.array(condition).default([]).describe('Known and not mended.'),
    permits: z.array(permit).default([]).describe('Permits.'),
    documents: z.array(document).default([]).describe('Papers in the folder or kept elsewhere.'),
    photos: z.record(z.string(), photo).default({}).describe('Photos, by file name without its ending.'),
    conveys: z.array(conveyed).default([]).describe('What stays and what goes.'),
    dues: z.array(due).default([]).describe('Association and district dues.'),
    answers: z.array(answer).default([]).describe('Questions buyers ask, answered once.'),
    care: z.array(careTask).default([]).describe('What the next owner does, and when.'),
    lead: lead.optional().describe('Lead paint: what is known.'),
    duties: duties
      .optional()
      .describe('What decides which laws reach the sale, and what the buyer was given. House file only.'),
    listing: listing
      .optional()
      .describe('Where the house is offered. Read by the command for listing remarks; printed nowhere else.'),
    money: money.optional().describe('For the tax preparer and the next house. House file only.'),
    'private-notes': z
      .array(text('A note.', 'offer from the neighbour'))
      .default([])
      .describe('Notes for the house file only.'),
  })
  .describe('The facts of one house.');

/** As someone writes it. */
export type HouseSpec = z.input<typeof houseSchema>;
/** Checked, with every value read. */
export type House = z.output<typeof houseSchema>;

export type Identity = House['house'];
export type Person = House['people'][number];
export type Level = House['levels'][number];
export type Structure = House['structures'][number];
export type Room = House['rooms'][number];
export type Finish = Room['finishes'][number];
export type RoomWindow = Room['windows'][number];
export type System = House['systems'][number];
export type Warranty = Exclude<NonNullable<System['warranty']>, readonly unknown[]>;
export type Alarm = House['alarms'][number];
export type Stair = House['stairs'][number];
export type Guard = House['guards'][number];
export type PoolBarrier = NonNullable<House['pool']>['barriers'][number];
export type WorkItem = House['work'][number];
export type Condition = House['conditions'][number];
export type Permit = House['permits'][number];
export type Document = House['documents'][number];
export type Photo = House['photos'][string];
export type DutyWords = NonNullable<House['duties']>;
export type Money = NonNullable<House['money']>;
export type Payee = Money['payees'][number];
export type CareTask = House['care'][number];
export type TopWord = keyof House;
