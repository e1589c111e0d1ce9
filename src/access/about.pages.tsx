import { Controller, Get, Header, Inject, Param } from '@nestjs/common';
import { catalogueEntry, isErrorCode } from '../platform/error-catalogue';
import { RequestError } from '../platform/request-error';
import { apiPage } from '../web/api/api-page';
import { openApiDocument, type OpenApiDocument } from '../web/api/open-api';
import { page, type PageResult } from '../web/http/answer';
import { ServiceAddress } from '../web/http/service-address';
import { Allow } from './allow';
import { RouteList } from './route-list';

/** Under this name the version of the service is asked for. */
export const versionToken = Symbol('version');

/** What the service tells everybody about itself. */
@Controller()
export class AboutPages {
  constructor(
    private readonly routes: RouteList,
    private readonly address: ServiceAddress,
    @Inject(versionToken) private readonly version: string,
  ) {}

  @Get('api')
  @Allow('anyone')
  api(): PageResult {
    return apiPage(this.document());
  }

  @Get('api/v1/openapi.json')
  @Header('cache-control', 'no-cache')
  @Allow('anyone')
  openApi(): OpenApiDocument {
    return this.document();
  }

  @Get('problems/:code')
  @Allow('anyone')
  problem(@Param('code') code: string): PageResult {
    if (!isErrorCode(code)) throw new RequestError('REQUEST.NOT_FOUND');
    const { status, text } = catalogueEntry(code);
    return page({
      title: code,
      body: (
        <div class="narrow stack">
          <h1>{code}</h1>
          <p>{text}</p>
          <p class="quiet">HTTP status {status}.</p>
        </div>
      ),
    });
  }

  private document(): OpenApiDocument {
    const described = this.routes
      .list()
      .flatMap(({ operation, allowances }) =>
        operation === null ? [] : [{ operation, isOpen: allowances.includes('anyone') }],
      );
    return openApiDocument(described, { version: this.version, publicUrl: this.address.url() });
  }
}
