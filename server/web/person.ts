import type { FastifyRequest } from "fastify";
import type { Person } from "../access/person.ts";

const people = new WeakMap<FastifyRequest, Person>();

/** Keeps who sent a request, once the session says so. */
export function sentBy(person: Person, request: FastifyRequest): void {
  people.set(request, person);
}

/** Who sent the request; undefined at the machine itself, and for a program with a token. */
export const personOf = (request: FastifyRequest): Person | undefined => people.get(request);
