import { Controller } from '@nestjs/common';
import { Allow } from '../access/allow';
import { CurrentMember, type Member } from '../access/member';
import { RequestError } from '../platform/request-error';
import { Input, Serve, type InputOf, type OutputOf } from '../web/api/operation';
import { BuildsService, type WatchedBuild } from './builds.service';
import { RequestBuildService } from './request-build.service';
import { actorOf } from './slate-member';
import { listBuilds, readBuild, startBuild, stopBuild } from './slate-operations';

/** Builds for programs. */
@Controller()
export class BuildsApi {
  constructor(
    private readonly requestBuild: RequestBuildService,
    private readonly builds: BuildsService,
  ) {}

  @Serve(startBuild)
  @Allow('assignor', 'administrator')
  async start(
    @CurrentMember() member: Member,
    @Input() { params, body }: InputOf<typeof startBuild>,
  ): Promise<OutputOf<typeof startBuild>> {
    const { seconds, seed, label } = body;
    const outcome = await this.requestBuild.request(actorOf(member), {
      slateId: params.slateId,
      ...(seconds === undefined ? {} : { seconds }),
      ...(seed === undefined ? {} : { seed }),
      ...(label === undefined ? {} : { label }),
    });
    switch (outcome.kind) {
      case 'requested':
        return { buildId: outcome.buildId };
      case 'refused':
        throw new RequestError('REQUEST.INVALID', {
          faults: outcome.reasons.map((message) => ({ path: '', message })),
        });
      case 'not-found':
        throw new RequestError('REQUEST.NOT_FOUND');
    }
  }

  @Serve(listBuilds)
  @Allow('assignor', 'administrator', 'observer')
  async list(
    @CurrentMember() { associationId }: Member,
    @Input() { params }: InputOf<typeof listBuilds>,
  ): Promise<OutputOf<typeof listBuilds>> {
    const items = await this.builds.ofSlate(associationId, params.slateId);
    return { items, total: items.length };
  }

  @Serve(readBuild)
  @Allow('assignor', 'administrator', 'observer')
  read(
    @CurrentMember() member: Member,
    @Input() { params }: InputOf<typeof readBuild>,
  ): Promise<OutputOf<typeof readBuild>> {
    return this.find(member, params);
  }

  @Serve(stopBuild)
  @Allow('assignor', 'administrator')
  async stop(
    @CurrentMember() member: Member,
    @Input() { params }: InputOf<typeof stopBuild>,
  ): Promise<OutputOf<typeof stopBuild>> {
    await this.find(member, params);
    return { stopped: await this.builds.stop(actorOf(member), params.buildId) };
  }

  private async find(
    { associationId }: Member,
    { slateId, buildId }: { slateId: string; buildId: string },
  ): Promise<WatchedBuild> {
    const build = await this.builds.get(associationId, buildId);
    if (build === null || build.slateId !== slateId) throw new RequestError('REQUEST.NOT_FOUND');
    return build;
  }
}
