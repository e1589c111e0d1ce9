import { Injectable, RequestMethod } from '@nestjs/common';
import { METHOD_METADATA, PATH_METADATA } from '@nestjs/common/constants';
import { DiscoveryService, MetadataScanner, Reflector } from '@nestjs/core';
import { operationOf, type Operation } from '../web/api/operation';
import { allowanceKey, type Allowance } from './allow';

/** One route and who may take it. */
export interface RouteEntry {
  readonly method: string;
  readonly path: string;
  /** Empty: nobody, which is a fault of ours. */
  readonly allowances: readonly Allowance[];
  /** What it does for programs; `null` for pages. */
  readonly operation: Operation | null;
}

/** Every route of every controller. */
@Injectable()
export class RouteList {
  constructor(
    private readonly discovery: DiscoveryService,
    private readonly scanner: MetadataScanner,
    private readonly reflector: Reflector,
  ) {}

  list(): RouteEntry[] {
    return this.discovery.getControllers().flatMap(({ instance, metatype }) => {
      if (metatype === null || typeof instance !== 'object' || instance === null) return [];
      const prototype = Object.getPrototypeOf(instance) as Record<string, unknown>;
      return this.scanner.getAllMethodNames(prototype).flatMap((name) => {
        const handler = prototype[name];
        if (typeof handler !== 'function' || !Reflect.hasMetadata(METHOD_METADATA, handler)) return [];
        const method = Reflect.getMetadata(METHOD_METADATA, handler) as RequestMethod;
        return [
          {
            method: RequestMethod[method],
            path: pathOf(metatype, handler),
            allowances:
              this.reflector.getAllAndOverride<Allowance[] | undefined>(allowanceKey, [handler, metatype]) ??
              [],
            operation: operationOf(handler),
          },
        ];
      });
    });
  }
}

function pathOf(controller: object, handler: object): string {
  const parts = [controller, handler].map((target) =>
    String(Reflect.getMetadata(PATH_METADATA, target) ?? ''),
  );
  return `/${parts
    .flatMap((part) => part.split('/'))
    .filter((part) => part !== '')
    .join('/')}`;
}
