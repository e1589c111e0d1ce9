import { Global, Module, type DynamicModule, type Provider } from '@nestjs/common';
import { APP_FILTER, APP_INTERCEPTOR } from '@nestjs/core';
import { versionToken } from './access/about.pages';
import { AccessModule } from './access/access.module';
import { Sessions } from './access/sessions';
import { SignIn } from './access/sign-in';
import type { SignInMailer } from './access/sign-in-mailer';
import { DataSource } from 'typeorm';
import { BriefingModule } from './briefing/briefing.module';
import { CalendarModule } from './calendar/calendar.module';
import { GamesWebModule } from './games/games-web.module';
import { navigation } from './navigation';
import { PlacesWebModule } from './places/places-web.module';
import { clockToken, type Clock } from './platform/clock';
import { Jobs } from './platform/jobs';
import type { Log } from './platform/log';
import { ProblemFilter } from './platform/problem.filter';
import { tokenSourceToken, type TokenSource } from './platform/random';
import { Tenancy } from './platform/tenancy';
import { RosterWebModule } from './roster/roster-web.module';
import { SlatesWebModule } from './slates/slates-web.module';
import { AnswerInterceptor } from './web/http/answer.interceptor';
import { EventStreams } from './web/http/event-streams';
import { FormTokens } from './web/http/form-tokens';
import { pageForProblem } from './web/http/page-for-problem';
import { PageSender } from './web/http/page-sender';
import { ServiceAddress } from './web/http/service-address';

/** What the pages and the API stand on. */
export interface AppGround {
  readonly dataSource: DataSource;
  readonly tenancy: Tenancy;
  readonly jobs: Jobs;
  readonly clock: Clock;
  readonly newToken: TokenSource;
  readonly log: Log;
  readonly address: ServiceAddress;
  /** Secret of this installation that form tokens are made with. */
  readonly formSecret: string;
  readonly signInMailer: SignInMailer;
  readonly version: string;
}

@Global()
@Module({})
class GroundModule {
  static on(ground: AppGround): DynamicModule {
    const formTokens = new FormTokens(ground.formSecret);
    const pages = new PageSender({ navigation, formTokens, isSecure: () => ground.address.isSecure() });
    const providers: Provider[] = [
      { provide: DataSource, useValue: ground.dataSource },
      { provide: Tenancy, useValue: ground.tenancy },
      { provide: Jobs, useValue: ground.jobs },
      { provide: clockToken, useValue: ground.clock },
      { provide: tokenSourceToken, useValue: ground.newToken },
      { provide: ServiceAddress, useValue: ground.address },
      { provide: versionToken, useValue: ground.version },
      { provide: FormTokens, useValue: formTokens },
      { provide: PageSender, useValue: pages },
      { provide: EventStreams, useValue: new EventStreams() },
      {
        provide: SignIn,
        inject: [Sessions],
        useFactory: (sessions: Sessions) =>
          new SignIn({
            tenancy: ground.tenancy,
            clock: ground.clock,
            log: ground.log,
            newSecret: ground.newToken,
            mailer: ground.signInMailer,
            publicUrl: () => ground.address.url(),
            sessions,
          }),
      },
    ];
    return {
      module: GroundModule,
      providers: [
        ...providers,
        { provide: APP_INTERCEPTOR, useValue: new AnswerInterceptor(pages) },
        {
          provide: APP_FILTER,
          useValue: new ProblemFilter({
            log: ground.log,
            publicUrl: () => ground.address.url(),
            renderPage: pageForProblem(pages),
          }),
        },
      ],
      exports: providers,
    };
  }
}

/** The whole service as one Nest application. */
@Module({})
export class AppModule {
  static on(ground: AppGround): DynamicModule {
    return {
      module: AppModule,
      imports: [
        GroundModule.on(ground),
        AccessModule,
        PlacesWebModule,
        RosterWebModule,
        GamesWebModule,
        SlatesWebModule,
        CalendarModule,
        BriefingModule,
      ],
    };
  }
}
