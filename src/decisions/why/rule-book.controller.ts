import { Controller, Get, Param, Query } from '@nestjs/common';
import { ApiPropertyOptional, ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Optional } from '../../platform/http/index.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { IsLocalDate } from '../../platform/http/instants.decorator.js';
import { RuleBookService } from './rule-book.service.js';
import { RuleBookDto, RuleInBookDto } from './rule.dto.js';

/** Which day's book. */
export class RuleBookQuery {
  @ApiPropertyOptional({
    type: 'string',
    format: 'date',
    description: "Day of the flight, in the club's zone; today unless given",
  })
  @Optional()
  @IsLocalDate()
  on?: string;
}

/** The rules that judge the club's flights, for people to read. */
@ApiTags('rules')
@Controller('rules')
export class RuleBookController {
  constructor(private readonly book: RuleBookService) {}

  @Get()
  @ApiRoute({
    id: 'readRuleBook',
    summary:
      'Every rule of the club: the law of its jurisdiction and its own, with citations, dates and numbers',
    answer: RuleBookDto,
  })
  read(@CurrentUser() user: SignedIn, @Query() query: RuleBookQuery): Promise<RuleBookDto> {
    return this.book.read(user.clubId, query.on ?? null);
  }

  @Get(':rule')
  @ApiRoute({ id: 'readRule', summary: 'One rule of the book', answer: RuleInBookDto, refuses: [404] })
  rule(
    @CurrentUser() user: SignedIn,
    @Param('rule') rule: string,
    @Query() query: RuleBookQuery,
  ): Promise<RuleInBookDto> {
    return this.book.rule(user.clubId, rule, query.on ?? null);
  }
}
