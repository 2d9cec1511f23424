/** One question at a time for one section of the panel: running, its progress, its outcome. Survives the panel. */

import type { StudyQuestion } from '../../calculation/index.ts';
import { baseNotebook } from '../../document/index.ts';
import type { Notebook } from '../../document/index.ts';
import type { Session } from '../session.ts';
import { StudyClient, type Asked, type Outcome } from './study-client.ts';

const clients = new WeakMap<Session, StudyClient>();

/** The session's line to the what-if worker. */
export function studyOf(session: Session): StudyClient {
  let client = clients.get(session);
  if (!client) {
    client = new StudyClient(session.world.startStudy, session.world.build);
    const opened = client;
    clients.set(session, opened);
    session.closing.add(() => opened.close());
  }
  return client;
}

export class Asking {
  outcome: Outcome | undefined;
  /** From 0 to 1 while a question is worked on. */
  done: number | undefined;
  /** The notebook that was asked about: an answer is stale when it is another one. */
  about: Notebook | undefined;
  #asked: Asked | undefined;

  constructor(
    private readonly session: Session,
    /** The variants' table asks about the base; the other questions about the page as it stands. */
    private readonly ofBase = false,
  ) {}

  get running(): boolean {
    return this.done !== undefined;
  }

  get stale(): boolean {
    return this.outcome !== undefined && this.about !== this.session.notebook;
  }

  async ask(question: StudyQuestion): Promise<Outcome> {
    this.#asked?.cancel();
    const { session } = this;
    const about = session.notebook;
    this.about = about;
    this.done = 0;
    session.changed();
    const asked = studyOf(session).ask(this.ofBase ? baseNotebook(about) : about, question, (done) => {
      if (this.#asked !== asked) return;
      this.done = done;
      session.changed();
    });
    this.#asked = asked;
    const outcome = await asked.outcome;
    if (this.#asked !== asked) return outcome;
    this.#asked = undefined;
    this.done = undefined;
    this.outcome = outcome;
    session.changed();
    return outcome;
  }

  cancel(): void {
    this.#asked?.cancel();
  }
}
