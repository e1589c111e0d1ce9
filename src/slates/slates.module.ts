import { Module } from '@nestjs/common';
import { BuildsService } from './builds.service';
import { ChooseProposalService } from './choose-proposal.service';
import { CreateSlateService } from './create-slate.service';
import { PublishSlateService } from './publish-slate.service';
import { ReplyService } from './reply.service';
import { RequestBuildService } from './request-build.service';

const services = [
  CreateSlateService,
  RequestBuildService,
  BuildsService,
  ChooseProposalService,
  PublishSlateService,
  ReplyService,
];

/** A slate's life, as far as pages and the API take part in it; solving is the workers' (`slate-services.ts`). */
@Module({ providers: services, exports: services })
export class SlatesModule {}
