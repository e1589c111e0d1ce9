import { Body, Controller, Get, Post } from '@nestjs/common';
import { Allow } from '../access/allow';
import { CurrentMember, type Member } from '../access/member';
import type { PageResult } from '../web/http/answer';
import { importsPage, type ImportsPageProps } from './imports.page';
import { ImportsService } from './imports/imports.service';
import { uploadedFiles, uploadedText } from './uploads';

/** Bringing lists in by hand. */
@Controller(':slug/imports')
export class ImportsPages {
  constructor(private readonly imports: ImportsService) {}

  @Get()
  @Allow('assignor', 'administrator')
  form(@CurrentMember() member: Member): PageResult {
    return this.page(member, null);
  }

  @Post()
  @Allow('assignor', 'administrator')
  async send(@CurrentMember() member: Member, @Body() body: unknown): Promise<PageResult> {
    const { associationId, accountId } = member;
    const kinds = this.imports.knownKinds().map(({ kind }) => kind.name);
    const files = await uploadedFiles(body, kinds);
    if (uploadedText(body, 'do') !== 'store') {
      const plan = await this.imports.plan(associationId, files);
      return this.page(member, { plan, isStored: false });
    }
    const { outcome, plan } = await this.imports.apply(associationId, files, { accountId });
    return this.page(member, { plan, isStored: outcome === 'stored' });
  }

  private page({ association }: Member, result: ImportsPageProps['result']): PageResult {
    const kinds = this.imports.knownKinds().map(({ kind }) => kind);
    return importsPage({ slug: association.slug, kinds, result });
  }
}
