import { Body, Controller, Get, Param, Patch, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentUser, type SignedIn } from '../../accounts/current-user.js';
import { Roles } from '../../accounts/roles.js';
import { ApiRoute } from '../../platform/http/api-route.js';
import { PageQuery } from '../../platform/http/pages.js';
import { UuidPipe } from '../../platform/http/uuid.pipe.js';
import { IfMatch } from '../../platform/http/versions.js';
import { NewSigner, SignerChanges, SignerPage, SignerView } from './signer.dto.js';
import { SignersService } from './signers.service.js';

/** Who may sign for work on the club's aircraft. */
@ApiTags('maintenance')
@Controller('signers')
@Roles('maintenance-coordinator', 'administrator')
export class SignersController {
  constructor(private readonly signers: SignersService) {}

  @Get()
  @ApiRoute({
    id: 'listSigners',
    summary: 'Who is on record as entitled to sign for work',
    answer: SignerPage,
    refuses: [403],
  })
  list(@CurrentUser() user: SignedIn, @Query() page: PageQuery): Promise<SignerPage> {
    return this.signers.list(user, page);
  }

  @Post()
  @ApiRoute({
    id: 'addSigner',
    summary: 'Record somebody who may sign for work',
    description: 'The record grants nothing: certificates and their limits decide.',
    answer: SignerView,
    status: 201,
    refuses: [403, 422],
  })
  add(@CurrentUser() user: SignedIn, @Body() body: NewSigner): Promise<SignerView> {
    return this.signers.add(user, body);
  }

  @Patch(':signerId')
  @ApiRoute({
    id: 'editSigner',
    summary: 'Change the record of a signer',
    description: 'What was signed before keeps the name and certificate it was signed with.',
    answer: SignerView,
    refuses: [403, 404, 412, 422, 428],
  })
  edit(
    @CurrentUser() user: SignedIn,
    @Param('signerId', UuidPipe) id: string,
    @IfMatch() version: number,
    @Body() changes: SignerChanges,
  ): Promise<SignerView> {
    return this.signers.edit(user, id, version, changes);
  }
}
