import { Controller } from '@nestjs/common';
import { Allow } from '../access/allow';
import { CurrentMember, type Member } from '../access/member';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import { Input, Serve, type InputOf, type OutputOf } from '../web/api/operation';
import { ChooseProposalService } from './choose-proposal.service';
import { CreateSlateService } from './create-slate.service';
import { readPublicationView } from './publication-view.query';
import { PublishSlateService } from './publish-slate.service';
import { actorOf } from './slate-member';
import {
  chooseProposal,
  listProposals,
  listSlates,
  openSlate,
  previewPublication,
  publishSlate,
  readSlate,
} from './slate-operations';
import { readSlateSummaries } from './slate-summary.query';
import { readProposalList, readSlateView } from './slate-view.query';

/** Slates for programs. */
@Controller()
export class SlatesApi {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly createSlate: CreateSlateService,
    private readonly proposals: ChooseProposalService,
    private readonly publications: PublishSlateService,
  ) {}

  @Serve(listSlates)
  @Allow('assignor', 'administrator', 'observer')
  async list(@CurrentMember() { associationId }: Member): Promise<OutputOf<typeof listSlates>> {
    const items = await this.tenancy.read(associationId, (tx) => readSlateSummaries(tx, associationId));
    return { items, total: items.length };
  }

  @Serve(openSlate)
  @Allow('assignor', 'administrator')
  async open(
    @CurrentMember() member: Member,
    @Input() { body }: InputOf<typeof openSlate>,
  ): Promise<OutputOf<typeof openSlate>> {
    const outcome = await this.createSlate.create(actorOf(member), body);
    switch (outcome.kind) {
      case 'created':
        return { id: outcome.slateId, games: outcome.games };
      case 'name-taken':
        throw new RequestError('REQUEST.CONFLICT', { detail: 'There is a slate of this name.' });
      case 'refused':
        throw new RequestError('REQUEST.INVALID', {
          faults: outcome.faults.map(({ field, message }) => ({ path: field, message })),
        });
    }
  }

  @Serve(readSlate)
  @Allow('assignor', 'administrator', 'observer')
  async read(
    @CurrentMember() { associationId }: Member,
    @Input() { params }: InputOf<typeof readSlate>,
  ): Promise<OutputOf<typeof readSlate>> {
    const view = await this.tenancy.read(associationId, (tx) =>
      readSlateView(tx, associationId, params.slateId),
    );
    if (view === null) throw new RequestError('REQUEST.NOT_FOUND');
    const { summary, games, review, kilometres, bound } = view;
    return {
      ...summary,
      crews: games.map(({ game, chief, umpire }) => ({
        game,
        chief: { ...chief, declinedBy: [...chief.declinedBy] },
        umpire: { ...umpire, declinedBy: [...umpire.declinedBy] },
      })),
      cost: { ...review.cost },
      kilometres,
      bound,
      violations: [...review.reasons],
      toMend: [...review.faults],
    };
  }

  @Serve(listProposals)
  @Allow('assignor', 'administrator', 'observer')
  async listProposals(
    @CurrentMember() { associationId }: Member,
    @Input() { params }: InputOf<typeof listProposals>,
  ): Promise<OutputOf<typeof listProposals>> {
    const items = await this.tenancy.read(associationId, (tx) =>
      readProposalList(tx, associationId, params.slateId),
    );
    return { items, total: items.length };
  }

  @Serve(chooseProposal)
  @Allow('assignor', 'administrator')
  async choose(
    @CurrentMember() member: Member,
    @Input() { params, body }: InputOf<typeof chooseProposal>,
  ): Promise<OutputOf<typeof chooseProposal>> {
    const outcome = await this.proposals.choose(actorOf(member), {
      slateId: params.slateId,
      proposalId: body.proposalId,
      ...(body.version === undefined ? {} : { expectedVersion: body.version }),
    });
    switch (outcome.kind) {
      case 'chosen':
        return { ...outcome, gamesSince: [...outcome.gamesSince] };
      case 'stale':
        throw new RequestError('REQUEST.CONFLICT', {
          detail: 'So much has changed since the proposal was made that it breaks rules. Build again.',
          faults: outcome.reasons.map((message) => ({ path: '', message })),
        });
      case 'changed':
        throw changed(outcome.version);
      case 'not-found':
        throw new RequestError('REQUEST.NOT_FOUND');
    }
  }

  @Serve(previewPublication)
  @Allow('assignor', 'administrator')
  async preview(
    @CurrentMember() { associationId }: Member,
    @Input() { params }: InputOf<typeof previewPublication>,
  ): Promise<OutputOf<typeof previewPublication>> {
    const view = await this.tenancy.read(associationId, (tx) =>
      readPublicationView(tx, associationId, params.slateId),
    );
    if (view === null) throw new RequestError('REQUEST.NOT_FOUND');
    return {
      version: view.review.version,
      violations: [...view.review.reasons],
      unchanged: view.review.preview.unchanged,
      told: view.told.map(({ official, lines }) => ({
        official,
        lines: lines.map((line) => ({ ...line, differences: [...line.differences] })),
      })),
    };
  }

  @Serve(publishSlate)
  @Allow('assignor', 'administrator')
  async publish(
    @CurrentMember() member: Member,
    @Input() { params, headers, body }: InputOf<typeof publishSlate>,
  ): Promise<OutputOf<typeof publishSlate>> {
    const outcome = await this.publications.publish(actorOf(member), {
      slateId: params.slateId,
      idempotencyKey: headers['idempotency-key'],
      ...(body.version === undefined ? {} : { expectedVersion: body.version }),
    });
    switch (outcome.kind) {
      case 'published':
        return outcome;
      case 'unchanged':
        return null;
      case 'refused':
        throw new RequestError('REQUEST.CONFLICT', {
          detail: 'The crews cannot be published as they stand; nobody was told anything.',
          faults: outcome.reasons.map((message) => ({ path: '', message })),
        });
      case 'changed':
        throw changed(outcome.version);
      case 'not-found':
        throw new RequestError('REQUEST.NOT_FOUND');
    }
  }
}

function changed(version: number): RequestError {
  return new RequestError('REQUEST.CONFLICT', {
    detail: `The slate was changed; its version is ${version} now.`,
  });
}
