import { type RepairRoot } from './broken-seats';
import { PossibleHolders } from './fit';
import { RepairPool, type FoundRepair } from './repair-pool';
import { RepairSearch } from './repair-search';

export interface RepairBudget {
  /** For the whole search; a step is one official tried for one seat. */
  readonly stepsMax: number;
  /** Asked every thousand steps and between passes. */
  readonly isStopped: () => boolean;
  /** Awaited between passes, so that the caller's other work can go on. */
  readonly pause: () => Promise<void>;
}

/** What is known about the smallest number of people. */
export interface FewestPeople {
  /** Seats that the best repair leaves open. */
  readonly openedSeats: number;
  readonly people: number;
  /** No repair that leaves as few seats open disturbs fewer people: all of them were tried. */
  readonly isProven: boolean;
}

export interface FoundRepairs {
  /** Best first. */
  readonly repairs: readonly FoundRepair[];
  /** Null when no repair was found. */
  readonly fewest: FewestPeople | null;
  readonly steps: number;
}

/** People beyond one for each vacant seat that are worth the trouble: a chain of three for one seat. */
const EXTRA_PEOPLE_MAX = 2;
/** Repairs looked at in a pass that is limited in width, about. */
const REPAIRS_PER_PASS = 4000;
/** Share of the steps for passes that only look for more alternatives; the rest is for proof. */
const LIMITED_PASS_SHARE = 0.15;
/** So many seats fewer to be left open than a quick repair does are tried, from none upwards. */
const OPENED_ONE_BY_ONE_MAX = 3;

/** Looks for repairs with ever more people, until there are enough or the budget is used up. */
export class RepairFinder {
  private readonly pool = new RepairPool();
  private readonly search: RepairSearch;
  private readonly clashCount: number;

  constructor(
    private readonly root: RepairRoot,
    private readonly budget: RepairBudget,
  ) {
    const { working, games, officials } = root;
    this.clashCount = games.length + officials.length;
    this.search = new RepairSearch(
      working,
      new PossibleHolders(working.slate),
      games,
      officials,
      () => this.pool.add(working),
      budget.isStopped,
    );
  }

  async find(): Promise<FoundRepairs> {
    let fewest: FewestPeople | null = null;
    for (const openedMax of await this.opensToTry()) {
      fewest = await this.searchUpwards(openedMax);
      if (fewest !== null) break;
    }
    await this.searchLastResort();
    return { repairs: this.pool.all(), fewest, steps: this.search.steps };
  }

  /** Seats that have to find somebody, about. */
  private get seatsToFill(): number {
    return this.root.brokenSeats.length + this.clashCount;
  }

  /** A first quick repair says how many seats may have to stay open; fewer are tried before as many. */
  private async opensToTry(): Promise<readonly number[]> {
    // A minor's seat has to be given up beside an open one, so that up to twice as many may open.
    await this.limitedPass(this.peopleMax, 2 * this.seatsToFill);
    const opened = this.pool.all()[0]?.opened ?? 2 * this.seatsToFill;
    const fewer = Array.from({ length: Math.min(opened, OPENED_ONE_BY_ONE_MAX) }, (_, i) => i);
    return [...fewer, opened];
  }

  /** A few more than one for each seat. */
  private get peopleMax(): number {
    return this.root.working.disturbed.length + this.seatsToFill + EXTRA_PEOPLE_MAX;
  }

  /** From the fewest possible people upwards; a few more than necessary for the sake of choice. */
  private async searchUpwards(openedMax: number): Promise<FewestPeople | null> {
    const { working } = this.root;
    const first = working.disturbed.length;
    let isProven = true;
    let fewest: FewestPeople | null = null;
    for (let people = first; people <= this.peopleMax && !this.budget.isStopped(); people++) {
      if (fewest !== null && people > fewest.people + EXTRA_PEOPLE_MAX) break;
      await this.limitedPass(people, openedMax);
      if (fewest === null && this.pool.fewestPeople(openedMax) > people) {
        isProven = (await this.fullPass(people, openedMax)) && isProven;
      }
      const found = this.pool.fewestPeople(openedMax);
      if (fewest === null && found <= people) fewest = this.describe(openedMax, isProven);
    }
    return fewest;
  }

  private describe(openedMax: number, isProven: boolean): FewestPeople {
    const best = this.pool.all().find(({ opened }) => opened <= openedMax)!;
    const people = this.pool.fewestPeople(openedMax);
    return { openedSeats: best.opened, people: best.people, isProven: isProven && best.people === people };
  }

  /** Leaves every seat open that lost its holder, with as little else as possible. */
  private async searchLastResort(): Promise<void> {
    const openedMax = 2 * this.seatsToFill;
    const first = this.root.working.disturbed.length;
    for (let extra = 0; extra <= EXTRA_PEOPLE_MAX && !this.budget.isStopped(); extra++) {
      await this.limitedPass(first + extra, openedMax);
      if (this.pool.all().some(({ opened }) => opened > 0)) return;
    }
  }

  private async limitedPass(peopleMax: number, openedMax: number): Promise<void> {
    await this.budget.pause();
    const { working } = this.root;
    const choices = Math.max(1, peopleMax - working.disturbed.length, this.root.brokenSeats.length);
    const width = Math.max(1, Math.floor(REPAIRS_PER_PASS ** (1 / choices)));
    this.search.pass({
      peopleMax,
      openedMax,
      width,
      stepsMax: Math.ceil(this.budget.stepsMax * LIMITED_PASS_SHARE),
    });
  }

  /** True when every repair with so few people was looked at. */
  private async fullPass(peopleMax: number, openedMax: number): Promise<boolean> {
    await this.budget.pause();
    const stepsMax = this.budget.stepsMax - this.search.steps;
    return stepsMax > 0 && this.search.pass({ peopleMax, openedMax, width: null, stepsMax });
  }
}
