import { Body, Controller, Get, Inject, Param, Post, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import { Allow } from '../access/allow';
import { CurrentMember, type Member } from '../access/member';
import { clockToken, type Clock } from '../platform/clock';
import { parseRequest } from '../platform/parse-request';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import { seeOther, type PageResult } from '../web/http/answer';
import { EventStreams } from '../web/http/event-streams';
import { buildEvents } from './build-events';
import { buildFigures, buildPage } from './build.page';
import { BuildsService, type WatchedBuild } from './builds.service';
import { RequestBuildService } from './request-build.service';
import { buildSecondsMax } from './slate-build.queue';
import { actorOf, idFrom, mayChangeSlates } from './slate-member';
import { Slate } from './slate.entity';

const buildForm = z.object({ seconds: z.coerce.number().min(1).max(buildSecondsMax) });

/** Building a slate: start, watch, stop. */
@Controller(':slug/slates/:slateId/builds')
export class BuildsPages {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly requestBuild: RequestBuildService,
    private readonly builds: BuildsService,
    private readonly streams: EventStreams,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  @Post()
  @Allow('assignor', 'administrator')
  async start(
    @CurrentMember() member: Member,
    @Param('slateId') slateId: string,
    @Body() body: unknown,
  ): Promise<PageResult> {
    const { seconds } = parseRequest(buildForm, body);
    const request = { slateId: idFrom(slateId), seconds };
    const outcome = await this.requestBuild.request(actorOf(member), request);
    switch (outcome.kind) {
      case 'requested':
        return seeOther(`${addressOf(member, slateId)}/builds/${outcome.buildId}`);
      case 'refused':
        throw new RequestError('REQUEST.INVALID', {
          faults: outcome.reasons.map((message) => ({ path: '', message })),
        });
      case 'not-found':
        throw new RequestError('REQUEST.NOT_FOUND');
    }
  }

  @Get(':buildId')
  @Allow('assignor', 'administrator', 'observer')
  async show(
    @CurrentMember() member: Member,
    @Param('slateId') slateId: string,
    @Param('buildId') buildId: string,
  ): Promise<PageResult> {
    const { associationId } = member;
    const build = await this.find(member, slateId, buildId);
    const slate = await this.tenancy.read(associationId, (tx) =>
      tx.findOneByOrFail(Slate, { associationId, id: build.slateId }),
    );
    return buildPage({
      ...member.association,
      slateName: slate.name,
      build,
      now: this.clock.now(),
      canChange: mayChangeSlates(member),
    });
  }

  @Get(':buildId/events')
  @Allow('assignor', 'administrator', 'observer')
  async events(
    @CurrentMember() member: Member,
    @Param('slateId') slateId: string,
    @Param('buildId') buildId: string,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    await this.find(member, slateId, buildId);
    const read = () => this.builds.get(member.associationId, buildId);
    const figures = (build: WatchedBuild) =>
      buildFigures(build, this.clock.now(), member.association.language);
    await this.streams.send(reply, (signal) => buildEvents({ read, figures, signal }));
  }

  @Post(':buildId/stop')
  @Allow('assignor', 'administrator')
  async stop(
    @CurrentMember() member: Member,
    @Param('slateId') slateId: string,
    @Param('buildId') buildId: string,
  ): Promise<PageResult> {
    await this.find(member, slateId, buildId);
    await this.builds.stop(actorOf(member), buildId);
    return seeOther(`${addressOf(member, slateId)}/builds/${buildId}`);
  }

  private async find(member: Member, slateId: string, buildId: string): Promise<WatchedBuild> {
    const build = await this.builds.get(member.associationId, idFrom(buildId));
    if (build === null || build.slateId !== slateId) throw new RequestError('REQUEST.NOT_FOUND');
    return build;
  }
}

function addressOf({ association }: Member, slateId: string): string {
  return `/${association.slug}/slates/${slateId}`;
}
